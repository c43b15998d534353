using EolSequencer.Language.Expressions;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Binding.Values;

/// <summary>Takes up conditions: C# that gives yes or no.</summary>
internal static class Conditions
{
    /// <summary>The condition behind a key; null: absent, or already reported.</summary>
    public static Expression? Add(MapReader keys, string key, ExpressionNames names, ExpressionBatch batch) =>
        keys.Text(key) is { } text ? batch.Add(text, 0, text.Text.Length, names, Wanted.Truth) : null;
}
