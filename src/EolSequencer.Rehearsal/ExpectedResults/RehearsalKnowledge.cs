using EolSequencer.Language.ExpectedResults;
using EolSequencer.Model.Plants;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Rehearsal.ExpectedResults;

/// <summary>What the simulators know of a test.</summary>
public sealed class RehearsalKnowledge : IRehearsalKnowledge
{
    /// <inheritdoc/>
    public string? WhyNoFault(string text) => FaultText.Parse(text).Why;

    /// <inheritdoc/>
    public bool Serves(StationFile station) => SimulatedStation.Serves(station);
}
