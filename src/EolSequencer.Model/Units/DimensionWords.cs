namespace EolSequencer.Model.Units;

/// <summary>How a dimension reads inside a message.</summary>
public static class DimensionWords
{
    /// <summary>The dimension in lower-case English, such as <c>rotational speed</c>.</summary>
    public static string Word(this Dimension dimension) => dimension switch
    {
        Dimension.ResistancePerVoltage => "resistance per voltage",
        Dimension.RotationalSpeed => "rotational speed",
        Dimension.VolumeFlow => "volume flow",
        Dimension.MassFlow => "mass flow",
        Dimension.LeakRate => "leak rate",
        Dimension.TemperatureDifference => "temperature difference",
        Dimension.VolumeShare => "share of volume",
        Dimension.SoundLevel => "sound level",
        Dimension.LuminousIntensity => "luminous intensity",
        _ => dimension.ToString().ToLowerInvariant(),
    };
}
