using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Csv;

/// <summary>A table with named columns; each cell keeps where it stands.</summary>
/// <param name="Columns">The names, in written order; none stands twice.</param>
/// <param name="Rows">A cell for each column.</param>
internal sealed record CsvTable(IReadOnlyList<YamlScalar> Columns, IReadOnlyList<IReadOnlyList<YamlScalar>> Rows);
