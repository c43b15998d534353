using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>The shapes of results that other expressions of the same load compute.</summary>
internal sealed class ComputedShapes
{
    private readonly Dictionary<Expression, ValueShape?> _shapes = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<Expression> _pending = new(ReferenceEqualityComparer.Instance);

    /// <summary>The expression will have a shape later.</summary>
    public void Await(Expression expression) => _pending.Add(expression);

    /// <summary>Its shape is known, or with null will never be.</summary>
    public void Settle(Expression expression, ValueShape? shape)
    {
        _pending.Remove(expression);
        _shapes[expression] = shape;
    }

    public bool IsPending(Expression expression) => _pending.Contains(expression);

    /// <summary>The shape of an expression that is not pending; null when it has a fault.</summary>
    public ValueShape? Of(Expression expression) =>
        _shapes.TryGetValue(expression, out var shape) ? shape : expression.Shape;
}
