using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Devices.Adapters;

/// <summary>What may stand behind a setting of an adapter.</summary>
public abstract record SettingForm
{
    /// <summary>Whether a setting is of this form.</summary>
    public abstract bool Takes(Setting setting);

    /// <summary>What to write, such as <c>a time between 1 ms and 60 s</c>.</summary>
    public abstract string Wanted { get; }

    /// <summary>A right one, such as <c>70 ms</c>.</summary>
    public abstract string Example { get; }

    /// <summary>Any text that is not empty.</summary>
    /// <param name="What">What it is, such as <c>the name of a serial port</c>.</param>
    public sealed record Text(string What, string Sample) : SettingForm
    {
        public override string Wanted => What;

        public override string Example => Sample;

        public override bool Takes(Setting setting) => setting is Setting.Scalar { Text.Length: > 0 };
    }

    /// <summary>A time with its unit, both ends included.</summary>
    public sealed record Time(TimeSpan Least, TimeSpan Most, string Sample = "70 ms") : SettingForm
    {
        public override string Wanted => $"a time between {Milliseconds(Least)} and {Milliseconds(Most)}";

        public override string Example => Sample;

        public override bool Takes(Setting setting) => Of(setting) is { } time && time >= Least && time <= Most;

        internal static TimeSpan? Of(Setting setting)
        {
            if (setting is not Setting.Scalar { Text: var text } || text.Split(' ', StringSplitOptions.RemoveEmptyEntries) is not [var number, var symbol]) return null;
            if (!NumberText.TryParse(number, out var value) || UnitTable.Exact(symbol) is not { } unit || unit.Dimension != UnitTable.Second.Dimension) return null;
            return unit.TryConvert(value, UnitTable.Second, out var seconds) && Math.Abs(seconds) < 1_000_000 ? TimeSpan.FromTicks((long)(seconds * TimeSpan.TicksPerSecond)) : null;
        }

        private static string Milliseconds(TimeSpan time) => new NumberValue((decimal)time.TotalMilliseconds, UnitTable.Required("ms")).ToString();
    }

    /// <summary>A whole number, decimal or as <c>0x0E80</c>, both ends included.</summary>
    public sealed record Whole(long Least, long Most, string Sample) : SettingForm
    {
        public override string Wanted => $"a whole number between {Least} and {Most}";

        public override string Example => Sample;

        public override bool Takes(Setting setting) => Of(setting) is { } number && number >= Least && number <= Most;

        internal static long? Of(Setting setting)
        {
            if (setting is not Setting.Scalar { Text: var text }) return null;
            var isHex = text.StartsWith("0x", StringComparison.OrdinalIgnoreCase);
            return long.TryParse(isHex ? text[2..] : text, isHex ? NumberStyles.AllowHexSpecifier : NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
                ? number
                : null;
        }
    }

    /// <summary>One of some words.</summary>
    public sealed record OneOf(params ImmutableArray<string> Words) : SettingForm
    {
        public override string Wanted => $"one of {string.Join(", ", Words)}";

        public override string Example => Words[0];

        public override bool Takes(Setting setting) => setting is Setting.Scalar { Text: var text } && Words.Contains(text);
    }

    /// <summary>Yes or no.</summary>
    public sealed record YesNo() : SettingForm
    {
        public override string Wanted => "yes or no";

        public override string Example => "yes";

        public override bool Takes(Setting setting) => setting is Setting.Scalar { Text: "yes" or "no" };
    }

    /// <summary>Bits per second, one of some: <c>500 kbit/s</c>, <c>1 Mbit/s</c>.</summary>
    public sealed record BitRate(params ImmutableArray<int> Rates) : SettingForm
    {
        public override string Wanted => $"one of {string.Join(", ", Rates.Select(Written))}";

        public override string Example => Written(Rates[0]);

        public override bool Takes(Setting setting) => Of(setting) is { } rate && Rates.Contains(rate);

        internal static int? Of(Setting setting)
        {
            if (setting is not Setting.Scalar { Text: var text } || text.Split(' ', StringSplitOptions.RemoveEmptyEntries) is not [var number, var unit]) return null;
            var factor = unit switch { "bit/s" => 1, "kbit/s" => 1_000, "Mbit/s" => 1_000_000, _ => 0 };
            return factor > 0 && NumberText.TryParse(number, out var value) && value is > 0 and <= 10_000_000 && decimal.IsInteger(value * factor) && value * factor <= int.MaxValue
                ? (int)(value * factor)
                : null;
        }

        private static string Written(int rate) =>
            rate % 1_000_000 == 0 ? $"{rate / 1_000_000} Mbit/s" : rate % 1_000 == 0 ? $"{rate / 1_000} kbit/s" : $"{rate} bit/s";
    }

    /// <summary>A list or a map that the adapter reads itself, telling what is wrong in it with its place.</summary>
    public sealed record Nested(string What, string Sample) : SettingForm
    {
        public override string Wanted => What;

        public override string Example => Sample;

        public override bool Takes(Setting setting) => setting is Setting.Map or Setting.List;
    }
}
