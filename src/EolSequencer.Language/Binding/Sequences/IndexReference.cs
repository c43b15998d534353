using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads what stands in the brackets of an index: a value, with or without quotes, or a loop name or parameter.</summary>
internal static class IndexReference
{
    /// <summary>The index; null: already reported.</summary>
    /// <param name="values">The values there are.</param>
    /// <param name="what">What is indexed, for messages.</param>
    public static IndexUse? Read(ScalarPart part, ImmutableArray<string> values, string what, Scope scope)
    {
        var isQuoted = part.Length >= 2 && part.Span[0] is '"' or '\'' && part.Span[^1] == part.Span[0];
        var word = isQuoted ? part.From(1, part.Length - 2) : part;
        if (!isQuoted && scope.Arguments.Shapes.ContainsKey(word.Text)) return Named(word, values, what, scope);
        if (values.Contains(word.Text)) return new IndexUse.Fixed(word.Text);

        var near = Nearest.Of(word.Text, isQuoted ? values : values.AddRange(scope.Arguments.Shapes.Keys));
        scope.Report.Add(SequenceCodes.UnknownIndex, word.Place, $"{what} has no index {Shown.Quoted(word.Text)}", near is null ? $"write one of {Shown.OneOf(values)}" : $"did you mean '{near}'?");
        return null;
    }

    // A name hides a value of the same spelling: inside a loop the loop is meant.
    private static IndexUse? Named(ScalarPart word, ImmutableArray<string> values, string what, Scope scope)
    {
        var possible = scope.Arguments.ValuesOf(word.Text);
        if (possible.IsEmpty)
        {
            scope.Report.Add(SequenceCodes.NoIndexName, word.Place, $"'{word}' is a {scope.Arguments.Shapes[word.Text]} and cannot be an index");
            return null;
        }

        if (possible.FirstOrDefault(value => !values.Contains(value)) is { } strange)
        {
            scope.Report.Add(SequenceCodes.UnknownIndex, word.Place, $"'{word}' can be '{strange}', which {what} does not have", $"its indexes are {Shown.OneOf(values)}");
            return null;
        }

        return new IndexUse.Named(word.Text);
    }
}
