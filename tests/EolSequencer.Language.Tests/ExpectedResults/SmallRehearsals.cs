using EolSequencer.Language.ExpectedResults;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Tests.ExpectedResults;

/// <summary>What rehearsals of the small test plant would know: one fault that is none, one station that is real.</summary>
internal sealed class SmallRehearsals : IRehearsalKnowledge
{
    public string? WhyNoFault(string text) => text == "gremlin" ? "there is no fault point 'gremlin'" : null;

    public bool Serves(StationFile station) => station.Id != "bench";
}
