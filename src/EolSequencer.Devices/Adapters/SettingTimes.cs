using EolSequencer.Model.Plants;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Devices.Adapters;

/// <summary>Times among the settings of an adapter.</summary>
public static class SettingTimes
{
    /// <summary>The time that a setting says, such as <c>70 ms</c>; null when it is not set or is none.</summary>
    /// <param name="fault">Why it is none: place, what was found, what to write; null when all is well.</param>
    public static TimeSpan? Time(this Setting.Map settings, string name, TimeSpan least, TimeSpan most, out string? fault)
    {
        fault = null;
        if (settings.Find(name) is not { } setting) return null;
        if (setting is Setting.Scalar { Text: var text } && Parse(text) is { } time && time >= least && time <= most) return time;
        fault = $"{setting.Place}: '{setting}' is no {name}; write a time between {Text(least)} and {Text(most)}, such as  {name}: 70 ms";
        return null;
    }

    private static TimeSpan? Parse(string text)
    {
        if (text.Split(' ', StringSplitOptions.RemoveEmptyEntries) is not [var number, var symbol]) return null;
        if (!NumberText.TryParse(number, out var value) || UnitTable.Exact(symbol) is not { } unit || unit.Dimension != UnitTable.Second.Dimension) return null;
        return unit.TryConvert(value, UnitTable.Second, out var seconds) && Math.Abs(seconds) < 1_000_000 ? TimeSpan.FromTicks((long)(seconds * TimeSpan.TicksPerSecond)) : null;
    }

    private static string Text(TimeSpan time) => new NumberValue((decimal)time.TotalMilliseconds, UnitTable.Required("ms")).ToString();
}
