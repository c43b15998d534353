namespace EolSequencer.Records.Exporting;

/// <summary>Days by the clocks of plants. A record can hold runs of several, so each run's own zone decides.</summary>
internal static class ExportDays
{
    /// <summary>Longer than any clock on earth is ahead of UTC, or behind it (RFC 8536 allows up to 26 h, in use are −12 to +14 h).</summary>
    private static readonly TimeSpan Widest = TimeSpan.FromHours(26);

    /// <summary>Nothing before this moment is of that day or a later one, whatever the zone.</summary>
    public static DateTimeOffset EarliestOf(DateOnly day) => Moved(day, -Widest);

    /// <summary>Nothing from this moment on is of that day or an earlier one, whatever the zone.</summary>
    public static DateTimeOffset LatestOf(DateOnly day) => Moved(day, Widest + TimeSpan.FromDays(1));

    /// <summary>The day of a moment; a <see cref="FormatException"/> when this computer does not know the zone.</summary>
    /// <param name="zone">Time zone of the plant (IANA).</param>
    public static DateOnly DayOf(DateTimeOffset moment, string zone) => TimeZoneInfo.TryFindSystemTimeZoneById(zone, out var clock)
        ? DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(moment, clock).DateTime)
        : throw new FormatException($"this computer knows no time zone '{zone}'");

    private static DateTimeOffset Moved(DateOnly day, TimeSpan by)
    {
        var ticks = Math.Clamp(day.ToDateTime(TimeOnly.MinValue).Ticks + by.Ticks, DateTimeOffset.MinValue.Ticks, DateTimeOffset.MaxValue.Ticks);
        return new DateTimeOffset(ticks, TimeSpan.Zero);
    }
}
