namespace EolSequencer.Language.Diagnostics;

/// <summary>What is wrong with a number.</summary>
public static class NumberCodes
{
    public static readonly DiagnosticCode Malformed = Error("NUM001",
        "A number that cannot be read", "write digits with a point, such as  12.5");

    public static readonly DiagnosticCode Missing = Error("NUM002",
        "Something else where a number is wanted", "write a number, or a C# value in brackets");

    public static readonly DiagnosticCode NotWritten = Error("NUM003",
        "A C# value where only a written number can stand", "write the number");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
