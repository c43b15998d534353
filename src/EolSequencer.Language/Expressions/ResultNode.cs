using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions;

/// <summary>A step or group whose results expressions may name.</summary>
/// <param name="MayBeMissing">True: on some vehicles or in some runs there is no result.</param>
internal abstract record ResultNode(bool MayBeMissing)
{
    /// <param name="Shape">What its value is; null when it finds none (a prompt) or when <paramref name="Computed"/> says.</param>
    /// <param name="Computed">The expression whose shape is the value's, once it is compiled.</param>
    /// <param name="Indexes">The index values of a channel that is read as a whole; otherwise empty.</param>
    internal sealed record Step(ValueShape? Shape, Expression? Computed, ImmutableArray<string> Indexes, bool MayBeMissing) : ResultNode(MayBeMissing);

    internal sealed record Group(ImmutableDictionary<string, ResultNode> Children, bool MayBeMissing) : ResultNode(MayBeMissing);
}
