using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Binding.Values;

/// <summary>What is wrong with a name, an id or a value that becomes part of one.</summary>
public static class NameCodes
{
    public static readonly DiagnosticCode BadName = Error("NAM001",
        "A name that cannot be one", "write a letter, then letters, digits and _");

    public static readonly DiagnosticCode BadIndexValue = Error("NAM002",
        "A value that cannot stand in the brackets of an id", "write letters, digits, _ and -");

    public static readonly DiagnosticCode Twice = Error("NAM003",
        "A name stands twice among its like", "give each a name of its own");

    public static readonly DiagnosticCode Reserved = Error("NAM004",
        "A name that already means something in expressions", "choose another name");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
