using System.Globalization;

namespace EolSequencer.Records.Canonical;

/// <summary>Wall time in records: always UTC, always with its Z, always 28 characters, so that text order is time order.</summary>
internal static class UtcText
{
    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'";

    /// <summary>The instant, whatever its offset, as <c>2026-03-29T00:45:00.0000000Z</c>.</summary>
    public static string Of(DateTimeOffset instant) => instant.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture);

    /// <summary>The instant with offset zero; any other form, a local time included, is a <see cref="FormatException"/>.</summary>
    public static DateTimeOffset Read(string text) => DateTimeOffset.ParseExact(
        text, Form, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal);
}
