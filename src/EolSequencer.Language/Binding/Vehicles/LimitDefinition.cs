using System.Collections.Immutable;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>A limit of a vehicle type, before it is known what it judges.</summary>
/// <param name="Name">Its name in <c>limits.NAME</c>.</param>
internal abstract record LimitDefinition(string Name)
{
    /// <summary>One expectation for every vehicle.</summary>
    public sealed record Single(string Name, YamlNode Is) : LimitDefinition(Name);

    /// <summary>One row for every possible vehicle.</summary>
    public sealed record Rows(string Name, ImmutableArray<Row> All) : LimitDefinition(Name);

    /// <summary>One expectation for each value of an index.</summary>
    public sealed record ByIndex(string Name, ImmutableArray<(string Index, YamlNode Is)> Windows) : LimitDefinition(Name);

    /// <summary>A row; <paramref name="When"/> is null when it holds for every vehicle.</summary>
    public sealed record Row(Expression? When, YamlNode Is);
}
