using System.Globalization;

namespace EolSequencer.Cli.Replaying;

/// <summary>Days as typed, both included, as moments of a plant's clock.</summary>
internal sealed record DayRange(DateOnly From, DateOnly To)
{
    private const string Form = "yyyy-MM-dd";

    /// <summary>The days; null with a message when they are none.</summary>
    public static DayRange? Parse(string from, string to, out string? fault)
    {
        fault = null;
        if (Day(from) is not { } first) fault = $"'{from}' is no day; write it as 2026-11-25";
        else if (Day(to) is not { } last) fault = $"'{to}' is no day; write it as 2026-11-25";
        else if (last < first) fault = $"the days end at {to}, before they begin at {from}";
        else return new DayRange(first, last);
        return null;
    }

    /// <summary>When the first day begins and the last has ended.</summary>
    /// <param name="zone">Time zone of the plant (IANA).</param>
    public (DateTimeOffset From, DateTimeOffset Until) In(string zone)
    {
        var clock = TimeZoneInfo.FindSystemTimeZoneById(zone);
        return (Midnight(From, clock), Midnight(To.AddDays(1), clock));
    }

    private static DateTimeOffset Midnight(DateOnly day, TimeZoneInfo zone)
    {
        var moment = day.ToDateTime(TimeOnly.MinValue);
        return new DateTimeOffset(moment, zone.GetUtcOffset(moment));
    }

    /// <summary>A day as typed; null when it is none.</summary>
    public static DateOnly? Day(string text) => DateOnly.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}
