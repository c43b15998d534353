using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Csv;

/// <summary>What can be wrong with the form of a table.</summary>
public static class CsvCodes
{
    public static readonly DiagnosticCode NoHeader = Error("CSV001",
        "A table without a line that names its columns", "name the columns in the first line, for example  rims,is");

    public static readonly DiagnosticCode OtherCount = Error("CSV002",
        "A line with more or fewer values than there are columns", "separate by commas; a value with a comma needs double quotes");

    public static readonly DiagnosticCode BadQuotes = Error("CSV003",
        "Double quotes that do not belong together", "put the whole value in double quotes, and double each one within");

    public static readonly DiagnosticCode ColumnTwice = Error("CSV004",
        "A column stands twice, or has no name", "give each column a name of its own");

    public static readonly DiagnosticCode TooLong = Error("CSV005",
        "A table with too many lines", "split the table");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
