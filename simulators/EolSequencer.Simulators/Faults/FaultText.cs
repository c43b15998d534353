using System.Globalization;
using EolSequencer.Model.Texts;

namespace EolSequencer.Simulators.Faults;

/// <summary>Reads faults as people write them: <c>NAME</c>, <c>NAME=VALUE</c>, <c>NAME=PLACE:NUMBER</c>, each with <c>@TIME</c> if need be.</summary>
public static class FaultText
{
    private static readonly (string Suffix, double Seconds)[] Times = [("ms", 0.001), ("min", 60), ("s", 1)];

    /// <summary>Reads one fault.</summary>
    public static FaultParse Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (body, at, badTime) = SplitTime(text.Trim());
        if (badTime is not null) return FaultParse.Wrong(badTime);

        var equals = body.IndexOf('=', StringComparison.Ordinal);
        var name = (equals < 0 ? body : body[..equals]).Trim();
        var value = equals < 0 ? null : body[(equals + 1)..].Trim();
        if (FaultCatalogue.Find(name) is not { } point) return FaultParse.Wrong(Unknown("fault point", name, FaultCatalogue.All.Select(known => known.Name)));
        return Place(point, value, at);
    }

    private static FaultParse Place(FaultPoint point, string? value, TimeSpan? at)
    {
        if (point.TakesAnyPlace)
        {
            return string.IsNullOrEmpty(value)
                ? FaultParse.Wrong($"{point.Name} wants a step: {point.Name}=GROUP.STEP")
                : FaultParse.Right(new InjectedFault(point, value, null, at));
        }

        if (point.Places.IsEmpty) return WithNumber(point, null, value, at);
        if (value is null) return FaultParse.Right(new InjectedFault(point, point.Places[0], null, at));

        var colon = value.IndexOf(':', StringComparison.Ordinal);
        var place = colon < 0 ? value : value[..colon].Trim();
        if (!point.Places.Contains(place)) return FaultParse.Wrong(Unknown($"place of {point.Name}", place, point.Places));
        return WithNumber(point, place, colon < 0 ? null : value[(colon + 1)..].Trim(), at);
    }

    private static FaultParse WithNumber(FaultPoint point, string? place, string? text, TimeSpan? at)
    {
        if (text is null) return FaultParse.Right(new InjectedFault(point, place, null, at));
        if (point.Number is null) return FaultParse.Wrong($"{point.Name} takes no number, '{text}' stands behind it");

        var digits = point.Unit.Length > 0 && text.EndsWith(point.Unit, StringComparison.Ordinal) ? text[..^point.Unit.Length].TrimEnd() : text;
        return double.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? FaultParse.Right(new InjectedFault(point, place, number, at))
            : FaultParse.Wrong($"'{text}' is no number of {point.Name}{(point.Unit.Length > 0 ? $" in {point.Unit}" : "")}");
    }

    private static (string Body, TimeSpan? At, string? Fault) SplitTime(string text)
    {
        var sign = text.LastIndexOf('@');
        if (sign < 0) return (text, null, null);
        var time = text[(sign + 1)..].Trim();
        foreach (var (suffix, seconds) in Times)
        {
            if (!time.EndsWith(suffix, StringComparison.Ordinal)) continue;
            var digits = time[..^suffix.Length].TrimEnd();
            if (double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var count) && count * seconds < 1e6)
            {
                return (text[..sign].Trim(), TimeSpan.FromSeconds(count * seconds), null);
            }
        }

        return (text, null, $"'{time}' is no time: write 90s, 1500ms or 2min behind the @");
    }

    private static string Unknown(string what, string name, IEnumerable<string> known)
    {
        var nearest = known.OrderBy(other => EditDistance.Between(name, other)).ThenBy(other => other, StringComparer.Ordinal).Take(3);
        return $"there is no {what} '{name}' – nearest: {string.Join(", ", nearest)}";
    }
}
