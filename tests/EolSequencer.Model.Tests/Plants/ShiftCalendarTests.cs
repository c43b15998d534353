using System.Globalization;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Tests.Plants;

/// <summary>A run belongs to exactly one shift and one production day, also in the nights in which clocks are set.</summary>
public sealed class ShiftCalendarTests
{
    private static readonly ShiftCalendar Berlin = new(PlantOf("Europe/Berlin", ("early", 6, 14), ("late", 14, 22), ("night", 22, 6)));

    [Theory, Trait("case", "TIM-01")]
    [InlineData("2026-03-28T22:00:00Z", 7, 42)]
    [InlineData("2026-10-24T22:00:00Z", 9, 54)]
    [InlineData("2026-11-24T22:00:00Z", 8, 48)]
    public void A_night_is_as_long_as_the_clocks_make_it(string within, int hours, int vehicles)
    {
        var night = Berlin.ShiftAt(At(within))!;
        Assert.Equal(("night", hours), (night.Shift, (int)(night.Until - night.From).TotalHours));

        // One vehicle every ten minutes over two days: each in one shift, and this many in this one.
        var moments = Enumerable.Range(0, 288).Select(k => night.From.AddDays(-1) + TimeSpan.FromMinutes(10 * k)).ToList();
        var shifts = moments.Select(moment => Berlin.ShiftAt(moment)!).ToList();
        Assert.Equal(vehicles, shifts.Count(shift => shift == night));
        Assert.All(moments.Zip(shifts), pair => Assert.True(pair.Second.Holds(pair.First)));
    }

    [Theory, Trait("case", "TIM-02")]
    [InlineData("2026-11-23T00:55:00Z", "night", "2026-11-22T21:00:00Z", "2026-11-22")] // Monday 01:55
    [InlineData("2026-11-23T04:59:59.9999999Z", "night", "2026-11-22T21:00:00Z", "2026-11-22")]
    [InlineData("2026-11-23T05:00:00Z", "early", "2026-11-23T05:00:00Z", "2026-11-23")]
    public void A_shift_that_passes_midnight_belongs_to_the_day_it_begins_in(string moment, string shift, string from, string day)
    {
        var found = Berlin.ShiftAt(At(moment))!;
        Assert.Equal((shift, At(from), DateOnly.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture)), (found.Shift, found.From, found.Day));
        Assert.Equal(found.Day, Berlin.DayAt(At(moment)).Day);
    }

    [Fact, Trait("case", "TIM-04")]
    public void Local_times_across_the_change_are_moments_apart()
    {
        var before = Berlin.MomentOf(new DateOnly(2026, 10, 25), new TimeOnly(2, 50));
        var after = At("2026-10-25T01:10:00Z");
        Assert.Equal(new TimeOnly(2, 10), TimeOnly.FromDateTime(Berlin.LocalTime(after)));
        Assert.Equal(TimeSpan.FromMinutes(20), after - before);
    }

    [Fact, Trait("case", "TIM-05")]
    public void A_time_that_the_zone_leaves_out_is_the_first_after_the_gap()
    {
        Assert.Equal(At("2026-03-29T01:00:00Z"), Berlin.MomentOf(new DateOnly(2026, 3, 29), new TimeOnly(2, 30)));
        var odd = new ShiftCalendar(PlantOf("Europe/Berlin", ("break", 2, 3), ("rest", 3, 2)));
        Assert.Equal("rest", odd.ShiftAt(At("2026-03-29T01:00:00Z"))!.Shift); // 02:00 to 03:00 is not there that day.
    }

    [Fact, Trait("case", "TIM-06")]
    public void A_zone_that_is_not_known_is_no_other_zone() =>
        Assert.Throws<TimeZoneNotFoundException>(() => new ShiftCalendar(PlantOf("Europe/Nowhere")));

    [Theory]
    [InlineData("2026-11-24T12:00:00Z", "early", "2026-11-24T05:00:00Z")]
    [InlineData("2026-11-24T20:00:00Z", "early", "2026-11-24T05:00:00Z")] // Between shifts.
    [InlineData("2026-11-25T04:59:00Z", "early", "2026-11-24T05:00:00Z")]
    [InlineData("2026-11-25T05:00:00Z", "early", "2026-11-25T05:00:00Z")]
    public void Between_shifts_the_one_that_began_last_still_counts(string moment, string shift, string from)
    {
        var calendar = new ShiftCalendar(PlantOf("Europe/Berlin", ("early", 6, 14)));
        Assert.Equal((shift, At(from)), (calendar.LastBegun(At(moment)).Shift, calendar.LastBegun(At(moment)).From));
    }

    [Fact]
    public void Without_shifts_it_is_the_production_day()
    {
        var calendar = new ShiftCalendar(PlantOf("Europe/Berlin"));
        var span = calendar.LastBegun(At("2026-11-24T04:30:00Z"));
        Assert.Equal((null, At("2026-11-23T05:00:00Z"), At("2026-11-24T05:00:00Z")), (span.Shift, span.From, span.Until));
        Assert.Null(calendar.ShiftAt(At("2026-11-24T04:30:00Z")));
    }

    [Fact]
    public void Every_minute_of_a_year_is_in_one_shift_and_one_day()
    {
        var start = At("2026-01-01T00:00:00Z");
        for (var minute = 0; minute < 365 * 24 * 60; minute += 10)
        {
            var moment = start.AddMinutes(minute);
            Assert.True(Berlin.ShiftAt(moment) is { } shift && shift.Holds(moment) && shift == Berlin.LastBegun(moment) && Berlin.DayAt(moment).Holds(moment), $"{moment:O}");
        }
    }

    private static Plant PlantOf(string zone, params ReadOnlySpan<(string Name, int From, int To)> shifts) => new()
    {
        Id = "odd", Title = LocalText.Plain("odd"), Folder = "", Zone = zone, DayStarts = new TimeOnly(6, 0), ResumeWithin = TimeSpan.FromMinutes(30), Route = [],
        Shifts = [.. shifts.ToArray().Select(shift => new Shift(shift.Name, new TimeOnly(shift.From, 0), new TimeOnly(shift.To, 0)))],
    };

    private static DateTimeOffset At(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture);
}
