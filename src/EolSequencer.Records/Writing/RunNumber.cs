using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace EolSequencer.Records.Writing;

/// <summary>The id of a run: its station and a number that no other run of that station in the data folder has, such as <c>startup_1-000042</c>.</summary>
internal readonly record struct RunNumber(string Station, long Number)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Station}-{Number:000000}");

    /// <summary>Reads exactly what <see cref="ToString"/> writes.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out RunNumber? run)
    {
        run = null;
        var dash = text.LastIndexOf('-');
        if (dash < 1 || !long.TryParse(text.AsSpan(dash + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return false;
        var read = new RunNumber(text[..dash], number);
        if (read.ToString() != text) return false;
        run = read;
        return true;
    }
}
