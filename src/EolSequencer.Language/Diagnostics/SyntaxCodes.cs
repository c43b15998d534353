namespace EolSequencer.Language.Diagnostics;

/// <summary>What is wrong with a value before its meaning matters: keys, kinds of nodes, numbers, words, durations.</summary>
public static class SyntaxCodes
{
    public static readonly DiagnosticCode UnknownKey = Error("SYN001",
        "A key that does not exist here", "compare with the language reference");

    public static readonly DiagnosticCode MissingKey = Error("SYN002",
        "A key that must be here is missing", "add it");

    public static readonly DiagnosticCode WrongKind = Error("SYN003",
        "A text, list or map where another of them is expected", "compare with the language reference");

    public static readonly DiagnosticCode OneOfTheseKeys = Error("SYN004",
        "Not exactly one of several keys", "keep exactly one of them");

    public static readonly DiagnosticCode EmptyText = Error("SYN005",
        "A text with nothing in it", "write the text, or leave the key out");

    public static readonly DiagnosticCode NoNull = Error("SYN006",
        "There is no null", "leave the key out; a text that reads like this needs quotes");

    public static readonly DiagnosticCode NotWhole = Error("SYN010",
        "No whole number", "write digits only, for example  12  or  0x0C");

    public static readonly DiagnosticCode LeadingZero = Error("SYN011",
        "A number that begins with zero", "leave the zeros out; a part number belongs where a text is expected");

    public static readonly DiagnosticCode BaseSixty = Error("SYN012",
        "A number with a colon", "write a time with its unit, for example  90 s");

    public static readonly DiagnosticCode OutOfRange = Error("SYN013",
        "A value outside of what is possible here", "choose one within the range");

    public static readonly DiagnosticCode QuotesNotWanted = Error("SYN014",
        "Quotes round something that is no text", "leave the quotes out");

    public static readonly DiagnosticCode NotYesNo = Error("SYN015",
        "Neither yes nor no", "write  yes  or  no  (true  and  false  mean the same)");

    public static readonly DiagnosticCode NotDuration = Error("SYN016",
        "No duration", "write a number and a unit of time, for example  5 s,  500 ms  or  2 min");

    public static readonly DiagnosticCode NoUnitOfTime = Error("SYN017",
        "A duration without a unit", "write the unit, for example  5 s");

    public static readonly DiagnosticCode UnknownWord = Error("SYN018",
        "A word that does not exist here", "choose one of the words that are listed");

    public static readonly DiagnosticCode NoLanguage = Error("SYN019",
        "No code of a language", "write two small letters as in ISO 639-1, for example  en  or  es");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
