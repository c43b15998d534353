using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Support;

/// <summary>What the one class of a compiled unit is to its host.</summary>
public abstract class ExpressionUnit : ScopeValues
{
    /// <summary>The full name of the class.</summary>
    public const string TypeName = "Expressions";

    /// <summary>Every function, by number.</summary>
    public abstract Func<ExpressionScope, Value>[] All();
}
