namespace EolSequencer.Model.Plants;

/// <summary>
/// Shifts and production days of a plant as moments. Lengths follow the zone: a night in which clocks are set is an hour shorter or
/// longer. A local time that the zone leaves out is the first moment after the gap; one that it has twice is the first of the two.
/// </summary>
/// <param name="plant">Its zone is known on this computer.</param>
public sealed class ShiftCalendar(Plant plant)
{
    private readonly TimeZoneInfo _zone = TimeZoneInfo.FindSystemTimeZoneById(plant.Zone);

    /// <summary>The shift that holds a moment, the day before's night shift included; null: none does.</summary>
    public ShiftSpan? ShiftAt(DateTimeOffset moment) => Around(moment).FirstOrDefault(span => span.Holds(moment));

    /// <summary>The shift that began last, over or not; the production day where the plant has no shifts.</summary>
    public ShiftSpan LastBegun(DateTimeOffset moment) =>
        Around(moment).Where(span => span.From <= moment).MaxBy(span => span.From) ?? DayAt(moment);

    /// <summary>The production day that holds a moment.</summary>
    public ShiftSpan DayAt(DateTimeOffset moment)
    {
        var day = LocalDay(moment);
        if (MomentOf(day, plant.DayStarts) > moment) day = day.AddDays(-1);
        return new ShiftSpan(null, MomentOf(day, plant.DayStarts), MomentOf(day.AddDays(1), plant.DayStarts), day);
    }

    /// <summary>A local date and time as a moment, in UTC.</summary>
    public DateTimeOffset MomentOf(DateOnly day, TimeOnly time)
    {
        var local = day.ToDateTime(time);
        while (_zone.IsInvalidTime(local)) local = local.AddMinutes(1);
        var offset = _zone.IsAmbiguousTime(local) ? _zone.GetAmbiguousTimeOffsets(local).Max() : _zone.GetUtcOffset(local);
        return new DateTimeOffset(local, offset).ToUniversalTime();
    }

    /// <summary>A moment as the plant's clocks show it.</summary>
    public DateTime LocalTime(DateTimeOffset moment) => TimeZoneInfo.ConvertTime(moment, _zone).DateTime;

    private DateOnly LocalDay(DateTimeOffset moment) => DateOnly.FromDateTime(LocalTime(moment));

    private IEnumerable<ShiftSpan> Around(DateTimeOffset moment)
    {
        var today = LocalDay(moment);
        return from day in new[] { today.AddDays(-1), today } from shift in plant.Shifts select SpanOf(shift, day);
    }

    private ShiftSpan SpanOf(Shift shift, DateOnly day)
    {
        var from = MomentOf(day, shift.From);
        return new ShiftSpan(shift.Name, from, MomentOf(shift.To > shift.From ? day : day.AddDays(1), shift.To), DayAt(from).Day);
    }
}
