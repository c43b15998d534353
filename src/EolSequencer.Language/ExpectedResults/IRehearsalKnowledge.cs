using EolSequencer.Model.Plants;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>What only the room that rehearses knows of a test. Where nobody is asked, nothing is said about it.</summary>
public interface IRehearsalKnowledge
{
    /// <summary>Why a text is no fault that can be put in; null when it is one.</summary>
    string? WhyNoFault(string text);

    /// <summary>True when a station has a simulated vehicle.</summary>
    bool Serves(StationFile station);
}
