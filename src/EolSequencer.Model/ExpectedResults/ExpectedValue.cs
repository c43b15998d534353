using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.ExpectedResults;

/// <summary>What the value of a step must be.</summary>
/// <param name="Is">Every end and every value of it is written down.</param>
/// <param name="Kind">The kind of value that the step finds.</param>
/// <param name="Place">Where it stands.</param>
public sealed record ExpectedValue(Expectation Is, ValueKind Kind, SourcePlace Place);
