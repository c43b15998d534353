using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Binding.Values;

/// <summary>What is wrong with the type of a value, wherever one is declared.</summary>
public static class ShapeCodes
{
    public static readonly DiagnosticCode UnknownType = Error("TYP001",
        "A type that does not exist here", "choose one of the types that are listed");

    public static readonly DiagnosticCode UnitOfNoNumber = Error("TYP002",
        "A unit on something that is no number", "leave the unit out");

    public static readonly DiagnosticCode TooFewChoices = Error("TYP003",
        "A choice between fewer than two values", "name two values at least");

    public static readonly DiagnosticCode BadLength = Error("TYP004",
        "A text of a length that cannot be", "write  text(1)  to  text(255)");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
