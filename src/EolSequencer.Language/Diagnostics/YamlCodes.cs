namespace EolSequencer.Language.Diagnostics;

/// <summary>What the reader finds in a file before anybody asks what the file means.</summary>
public static class YamlCodes
{
    public static readonly DiagnosticCode EmptyFile = Error("YML001",
        "The file says nothing", "begin it with its kind, for example  sequence: NAME");

    public static readonly DiagnosticCode InvisibleCharacter = Error("YML002",
        "A character that nobody sees", "delete it; inside double quotes it can be written as \\xNN or \\uNNNN");

    public static readonly DiagnosticCode TabInIndentation = Error("YML003",
        "A tab at the beginning of a line", "indent with blanks");

    public static readonly DiagnosticCode TooDeep = Error("YML004",
        "More than 64 lists and maps inside each other", "nest less; a fragment can take over an inner part");

    public static readonly DiagnosticCode SecondDocument = Error("YML005",
        "A second document in one file", "put it into a file of its own");

    public static readonly DiagnosticCode Directive = Error("YML006",
        "A line that begins with %", "delete it; a text that begins with % needs quotes");

    public static readonly DiagnosticCode Anchor = Error("YML010",
        "Anchors are not supported", "write the text again where it is needed, or use a fragment; a text that begins with & needs quotes");

    public static readonly DiagnosticCode Alias = Error("YML011",
        "Aliases are not supported", "write the text again where it is needed, or use a fragment; a text that begins with * needs quotes");

    public static readonly DiagnosticCode MergeKey = Error("YML012",
        "Merge keys are not supported", "write the keys out, or use defaults or a fragment");

    public static readonly DiagnosticCode Tag = Error("YML013",
        "A value that begins with !", "put the value in quotes");

    public static readonly DiagnosticCode DuplicateKey = Error("YML014",
        "A key stands twice in one map", "keep one of the two");

    public static readonly DiagnosticCode KeyIsNoText = Error("YML015",
        "A key that is no plain word", "write  key: value  with a word as key");

    public static readonly DiagnosticCode NoValue = Error("YML020",
        "A key without a value", "write a value, or leave the key out");

    public static readonly DiagnosticCode CutByHash = Error("YML021",
        "A text cut off by #", "put the text in quotes; for a comment put a blank behind the #");

    public static readonly DiagnosticCode CutByComma = Error("YML022",
        "A text within { } cut off by a comma", "put the text in quotes");

    public static readonly DiagnosticCode NoBlankAfterColon = Error("YML023",
        "A colon without a blank behind it", "write  key: value");

    public static readonly DiagnosticCode BracketInText = Error("YML024",
        "A bracket or brace in a text without quotes", "put the text in quotes");

    public static readonly DiagnosticCode ReservedStart = Error("YML025",
        "A text begins with a character that YAML uses itself", "put the text in quotes");

    public static readonly DiagnosticCode TextAfterQuote = Error("YML026",
        "More text behind a closing quote", "put quotes round the whole text");

    public static readonly DiagnosticCode ColonInText = Error("YML027",
        "A colon and a blank in a text without quotes", "put the text in quotes");

    public static readonly DiagnosticCode TabInText = Error("YML028",
        "A tab in a text", "write a blank; inside double quotes a tab can be written as \\t");

    public static readonly DiagnosticCode SwallowedLine = Error("YML029",
        "A text runs on over a line that looks like a key", "close the quotes, or put the key where the other keys begin");

    public static readonly DiagnosticCode UnclosedQuote = Error("YML030",
        "A text in quotes is not closed", "close the quotes");

    public static readonly DiagnosticCode Brackets = Error("YML031",
        "Brackets or braces that do not pair", "close each [ with ] and each { with }");

    public static readonly DiagnosticCode Indentation = Error("YML032",
        "A line begins in a column that fits nothing above it", "let entries of one list or map begin in one column");

    public static readonly DiagnosticCode EntryExpected = Error("YML033",
        "Something else where an entry is expected", "write  key: value  in a map and  - value  in a list");

    public static readonly DiagnosticCode BadEscape = Error("YML034",
        "A backslash that means nothing", "write the text in single quotes, where a backslash is just itself");

    public static readonly DiagnosticCode Unreadable = Error("YML039",
        "The reader cannot make sense of this", "compare with the lines above; a text with : # [ ] { } , or quotes in it belongs into quotes");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
