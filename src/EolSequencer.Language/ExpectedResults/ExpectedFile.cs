using System.Collections.Immutable;
using EolSequencer.Model.ExpectedResults;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>A file of expected results without a fault.</summary>
/// <param name="Id">Unique in the plant.</param>
/// <param name="Path">As messages show it.</param>
/// <param name="Runs">Its tests in written order, at least one.</param>
public sealed record ExpectedFile(string Id, string Path, ImmutableArray<ExpectedRun> Runs);
