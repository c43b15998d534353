using System.Collections.Immutable;

namespace EolSequencer.Model.Vehicles;

/// <summary>A vehicle identification number, or why a text is none.</summary>
/// <param name="Vin">The number; null when it was refused.</param>
/// <param name="Fault">Why it was refused, naming position and character; null when it was not.</param>
/// <param name="Warnings">What speaks against an accepted number.</param>
public sealed record VinResult(Vin? Vin, string? Fault, ImmutableArray<string> Warnings)
{
    internal static VinResult Accepted(Vin vin, params ImmutableArray<string> warnings) => new(vin, null, warnings);

    internal static VinResult Refused(string fault) => new(null, fault, []);
}
