namespace EolSequencer.Language.Diagnostics;

/// <summary>What is wrong with a unit.</summary>
public static class UnitCodes
{
    public static readonly DiagnosticCode Unknown = Error("UNT001",
        "A unit that the unit table does not hold", "write a unit of the table; case counts");

    public static readonly DiagnosticCode Missing = Error("UNT002",
        "A plain number where a quantity is wanted", "write the unit behind the number");

    public static readonly DiagnosticCode Superfluous = Error("UNT003",
        "A unit where a count is wanted", "leave the unit out");

    public static readonly DiagnosticCode WrongDimension = Error("UNT004",
        "A unit of another dimension", "write a unit of the dimension that is judged");

    public static readonly DiagnosticCode Mixed = Error("UNT005",
        "Two units in one window", "write both ends in one unit");

    public static readonly DiagnosticCode FarApart = new("UNT006", Severity.Warning,
        "A unit a thousand million times larger or smaller than the judged one", "check capital and small letters: m is a thousandth, M a million");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
