using EolSequencer.Model.Source;

namespace EolSequencer.Model.ExpectedResults;

/// <summary>What an author states, and where it stands, so that whoever finds otherwise can point at it.</summary>
public sealed record Stated<T>(T Value, SourcePlace Place);
