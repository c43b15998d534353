using System.Collections.Immutable;

namespace EolSequencer.Model.Expressions;

/// <summary>A result of another step as an expression names it.</summary>
/// <param name="Path">The parts from the top of the sequence, each with its loop values.</param>
/// <param name="Optional">True when the author wrote <c>.or(…)</c>, so a missing result has an answer.</param>
public sealed record ResultUse(ImmutableArray<ResultUse.Part> Path, bool Optional)
{
    /// <summary>One part of a path: a name and the loop values in brackets behind it.</summary>
    public sealed record Part(string Name, ImmutableArray<IndexUse> Indexes);

    /// <summary>The full id of the step instance meant, such as <c>wheel_nuts[fl].torque</c>.</summary>
    public string Resolve(Arguments arguments) =>
        string.Join('.', Path.Select(part => part.Indexes.IsEmpty
            ? part.Name
            : $"{part.Name}[{string.Join(',', part.Indexes.Select(index => index.Resolve(arguments)))}]"));
}
