namespace EolSequencer.Language.Diagnostics;

/// <summary>What is wrong with what a value must be.</summary>
public static class ExpectationCodes
{
    public static readonly DiagnosticCode NoText = Error("WIN001",
        "A list or map where an expectation is wanted", "write it as one text, such as  1.6 .. 2.4 A  or  one of [steel, alloy]");

    public static readonly DiagnosticCode UnknownForm = Error("WIN002",
        "An expectation of no known form",
        "write  a .. b UNIT,  x ± y UNIT,  at least x,  at most x,  equals x,  one of [..],  only [..],  empty,  matches /…/,  yes,  no  or  limits.NAME");

    public static readonly DiagnosticCode Inverted = Error("WIN003",
        "A window that ends below its start", "swap the two");

    public static readonly DiagnosticCode NoEnds = Error("WIN004",
        "A window without ends", "write at least one end");

    public static readonly DiagnosticCode LookAlike = Error("WIN005",
        "A character that looks like another one", "write two dots between the ends of a window, and - for minus");

    public static readonly DiagnosticCode Tolerance = Error("WIN006",
        "A tolerance that cannot be one", "write  x ± y UNIT  with two numbers, y not negative");

    public static readonly DiagnosticCode OpenBracket = Error("WIN007",
        "A bracket that is not closed", "close each ( with ) and each [ with ]");

    public static readonly DiagnosticCode BehindEnd = Error("WIN008",
        "More text behind the end of an expectation", "delete it");

    public static readonly DiagnosticCode BadList = Error("WIN009",
        "A list that cannot be read", "write  [first, second]");

    public static readonly DiagnosticCode NamedTwice = Error("WIN010",
        "A value stands twice in a list", "keep one of the two");

    public static readonly DiagnosticCode BadPattern = Error("WIN011",
        "A regular expression that cannot be read", "write  matches /PATTERN/");

    public static readonly DiagnosticCode WrongKind = Error("WIN012",
        "An expectation that does not fit the kind of value", "choose a form that judges this kind of value");

    public static readonly DiagnosticCode Inexact = Error("WIN013",
        "An exact comparison with a number that came through floating point", "write a window, such as  x ± y UNIT");

    public static readonly DiagnosticCode Impossible = Error("WIN014",
        "A value that can never come", "write one of the values that can come");

    public static readonly DiagnosticCode TooUncertain = Error("WIN015",
        "An uncertainty that leaves no value to pass", "measure more exactly, widen the window, or decide simply");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
