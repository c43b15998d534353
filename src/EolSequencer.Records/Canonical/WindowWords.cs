using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// The words that <see cref="Window.Describe"/> finds for a window, from its ends as texts. An expectation that says just
/// this is not written out: the ends stand in the event already.
/// </summary>
internal static class WindowWords
{
    /// <summary>The words; null when both ends are open.</summary>
    public static string? For(string? low, string? high, string? unit)
    {
        var behind = unit is null ? "" : $" {unit}";
        return (low, high) switch
        {
            ({ }, { }) => $"{low} .. {high}{behind}",
            ({ }, null) => $"at least {low}{behind}",
            (null, { }) => $"at most {high}{behind}",
            _ => null,
        };
    }

    /// <summary>Whether an expectation is just these words; built nowhere, because it is asked for every criterion of a day.</summary>
    public static bool Say(string? expected, string? low, string? high, string? unit)
    {
        if (expected is null) return low is null && high is null;
        var rest = expected.AsSpan();
        var window = (low, high) switch
        {
            ({ }, { }) => Take(ref rest, low) && Take(ref rest, " .. ") && Take(ref rest, high),
            ({ }, null) => Take(ref rest, "at least ") && Take(ref rest, low),
            (null, { }) => Take(ref rest, "at most ") && Take(ref rest, high),
            _ => false,
        };
        return window && (unit is null || (Take(ref rest, " ") && Take(ref rest, unit))) && rest.IsEmpty;
    }

    private static bool Take(ref ReadOnlySpan<char> rest, ReadOnlySpan<char> part)
    {
        if (!rest.StartsWith(part)) return false;
        rest = rest[part.Length..];
        return true;
    }
}
