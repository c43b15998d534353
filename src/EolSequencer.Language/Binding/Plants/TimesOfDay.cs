using System.Globalization;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Binding.Plants;

/// <summary>Reads times of day such as <c>'06:00'</c>.</summary>
internal static class TimesOfDay
{
    /// <summary>What such a time looks like.</summary>
    public static ValueForm Form { get; } = new ValueForm.Text("^(?:[01][0-9]|2[0-3]):[0-5][0-9]$", Subject.None);

    /// <summary>The time behind a key; null: absent, or already reported.</summary>
    public static TimeOnly? Read(MapReader keys, string key)
    {
        if (keys.Text(key) is not { } text) return null;
        if (TimeOnly.TryParseExact(text.Text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)) return time;
        keys.Report.Add(PlantCodes.BadTimeOfDay, text.Place, $"'{key}' is {Shown.Quoted(text.Text)}, which is no time of day");
        return null;
    }
}
