using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Sequences;

/// <summary>A value that is written down, or computed by an expression in brackets.</summary>
public abstract record Operand
{
    private Operand() { }

    /// <summary>Written down.</summary>
    public sealed record Constant(Value Value) : Operand;

    /// <summary>Computed when it is needed.</summary>
    public sealed record Computed(Expression Expression) : Operand;

    /// <summary>As the author wrote it, for people.</summary>
    public sealed override string ToString() => this switch
    {
        Constant one => one.Value.ToString()!,
        Computed one => $"({one.Expression.Text})",
        _ => "",
    };
}
