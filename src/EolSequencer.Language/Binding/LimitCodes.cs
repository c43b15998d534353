using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Binding;

/// <summary>What is wrong with the limits of a vehicle type and their use.</summary>
public static class LimitCodes
{
    public static readonly DiagnosticCode UnknownLimit = Error("LIM001",
        "A limit that the vehicle type does not have", "add it to  limits  of the vehicle type, or correct the name");

    public static readonly DiagnosticCode LimitInLimit = Error("LIM002",
        "A limit that names another limit", "write the window itself");

    public static readonly DiagnosticCode NoRows = Error("LIM003",
        "A limit without rows", "write one row at least:  - { when: …, is: … }");

    public static readonly DiagnosticCode IndexUnknown = Error("LIM004",
        "An index that the limit does not have", "add a window for it, or correct the name");

    public static readonly DiagnosticCode IndexMissing = Error("LIM005",
        "The limit has a window for each index, and it is not said which", "read an indexed channel, or write  limits.NAME[index]");

    public static readonly DiagnosticCode IndexSuperfluous = Error("LIM006",
        "An index on a limit that has none", "leave the brackets out");

    public static readonly DiagnosticCode RowUndecided = Error("LIM010",
        "A row that options alone do not decide", "let  when  name options, or facts of the order that are yes or no or one of several words");

    public static readonly DiagnosticCode RowsOverlap = Error("LIM011",
        "Two rows of a limit apply to one vehicle", "let their conditions exclude each other");

    public static readonly DiagnosticCode NoRow = Error("LIM012",
        "No row of a limit applies to a vehicle", "add a row for it, or keep the vehicle from the step with  when");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
