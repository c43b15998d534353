using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary>Parts of other vehicles, made up for a rehearsal; no record is asked, so that the same request gives the same events.</summary>
/// <param name="there">What is on other vehicles.</param>
public sealed class RehearsedSerials(params IEnumerable<(string Part, string Serial, string Vin, string Run)> there) : IPartSerials
{
    private readonly Dictionary<(string Part, string Serial), (string Vin, string Run)> _there = there.ToDictionary(one => (one.Part, one.Serial), one => (one.Vin, one.Run));

    public SerialAnswer Elsewhere(Vin vin, PartName part, string serial) =>
        _there.TryGetValue((part.Kind, serial), out var found) && found.Vin != vin.Text
            ? new SerialAnswer.There(found.Vin, part, found.Run)
            : new SerialAnswer.Nowhere();
}
