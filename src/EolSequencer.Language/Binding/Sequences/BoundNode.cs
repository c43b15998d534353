using EolSequencer.Language.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>A bound node, and the results that stand behind it.</summary>
internal readonly record struct BoundNode(Node Node, ResultScope Results);
