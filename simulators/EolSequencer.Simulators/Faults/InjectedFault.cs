using System.Globalization;

namespace EolSequencer.Simulators.Faults;

/// <summary>A fault as somebody asked for it.</summary>
/// <param name="Point">Which.</param>
/// <param name="Place">Where; null when the point has one place only.</param>
/// <param name="Number">How much; null: the point's own.</param>
/// <param name="At">When it begins, counted from the vehicle's start; null: it is there from the beginning.</param>
public sealed record InjectedFault(FaultPoint Point, string? Place, double? Number, TimeSpan? At)
{
    /// <summary>The form that <see cref="FaultText.Parse"/> reads.</summary>
    public override string ToString()
    {
        var number = Number?.ToString(CultureInfo.InvariantCulture);
        var value = (Place, number) switch
        {
            (null, null) => "",
            (null, _) => $"={number}",
            (_, null) => $"={Place}",
            _ => $"={Place}:{number}",
        };
        var at = At is { } moment ? $"@{moment.TotalSeconds.ToString(CultureInfo.InvariantCulture)}s" : "";
        return Point.Name + value + at;
    }
}
