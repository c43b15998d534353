using System.Collections.Immutable;

namespace EolSequencer.Model.Expressions;

/// <summary>A result of another step as an expression names it.</summary>
/// <param name="Levels">
/// In how many of the groups around the asking step the path begins; 0 is the top of the sequence. A sibling is named
/// this way because its group instance may have loop names that the asking step does not see (inside a fragment).
/// </param>
/// <param name="Path">The parts from there on, each with its loop values.</param>
/// <param name="Optional">True when the author wrote <c>.or(…)</c>, so a missing result has an answer.</param>
public sealed record ResultUse(int Levels, ImmutableArray<ResultUse.Part> Path, bool Optional)
{
    /// <summary>One part of a path: a name and the loop values in brackets behind it.</summary>
    public sealed record Part(string Name, ImmutableArray<IndexUse> Indexes);

    /// <summary>The full id of the step instance meant, such as <c>wheel_nuts[fl].torque</c>.</summary>
    /// <param name="arguments">Loop names and parameters in force where the expression stands.</param>
    /// <param name="asker">Full id of the step or group instance that asks; at least <see cref="Levels"/> parts.</param>
    public string Resolve(Arguments arguments, string asker)
    {
        var path = string.Join('.', Path.Select(part => part.Indexes.IsEmpty
            ? part.Name
            : $"{part.Name}[{string.Join(',', part.Indexes.Select(index => index.Resolve(arguments)))}]"));
        return Levels == 0 ? path : $"{Outer(asker)}.{path}";
    }

    private ReadOnlySpan<char> Outer(string id)
    {
        var (level, inBrackets) = (0, false);
        for (var at = 0; at < id.Length; at++)
        {
            if (id[at] is '[' or ']') inBrackets = id[at] == '[';
            if (id[at] == '.' && !inBrackets && ++level == Levels) return id.AsSpan(0, at);
        }

        throw new InvalidOperationException($"'{id}' does not lie in {Levels} groups");
    }
}
