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

    public static readonly DiagnosticCode BadTable = Error("LIM020",
        "Not the path of a table", "name a .csv file by its path from the plant's folder");

    public static readonly DiagnosticCode UnknownColumn = Error("LIM021",
        "A column that means nothing here", "name an option,  order.FACT,  when,  index  or  is");

    public static readonly DiagnosticCode NoWindows = Error("LIM022",
        "A table that does not say what the values must be", "add the column  is");

    public static readonly DiagnosticCode UnknownValue = Error("LIM023",
        "A value that the option or fact cannot have", "write one of its values, or nothing for all of them");

    public static readonly DiagnosticCode IndexAndVehicle = Error("LIM024",
        "A table by index that also goes by vehicle", "keep the column  index  or those about the vehicle");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
