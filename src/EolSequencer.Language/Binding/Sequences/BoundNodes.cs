using System.Collections.Immutable;
using EolSequencer.Language.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Bound nodes, and the results that stand behind them.</summary>
internal readonly record struct BoundNodes(ImmutableArray<Node> Nodes, ResultScope Results);
