using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Expressions;

/// <summary>What can be wrong with an expression.</summary>
public static class ExpressionCodes
{
    public static readonly DiagnosticCode NotCSharp = Error("EXP001",
        "This is no C# expression", "write one expression without a semicolon");

    public static readonly DiagnosticCode TooLong = Error("EXP002",
        "The expression is too long or too deep", "split it: a compute step can take over a part");

    public static readonly DiagnosticCode NotAllowed = Error("EXP003",
        "Something that expressions may not do", "expressions only read and calculate");

    public static readonly DiagnosticCode UnknownName = Error("EXP004",
        "A name that means nothing here", "name a device, vehicle, order, results, a loop name or a parameter");

    public static readonly DiagnosticCode UnknownChannel = Error("EXP005",
        "The device has no such channel", "see the device kind or the vehicle type for its channels");

    public static readonly DiagnosticCode UnknownOption = Error("EXP006",
        "The vehicle type has no such option", "see the vehicle type for its options");

    public static readonly DiagnosticCode UnknownFact = Error("EXP007",
        "Orders have no such fact", "see 'order' in the vehicle type");

    public static readonly DiagnosticCode UnknownResult = Error("EXP008",
        "There is no such step", "name a sibling by its id, anything else from the top of the sequence");

    public static readonly DiagnosticCode UnknownUnit = Error("EXP009",
        "Not a unit of this quantity", "take the number with a unit of its dimension");

    public static readonly DiagnosticCode UnknownFunction = Error("EXP010",
        "There is no such function", "see the language reference for the functions");

    public static readonly DiagnosticCode IndexNeeded = Error("EXP011",
        "An index is missing", "put a value in quotes, a loop name or a parameter in square brackets");

    public static readonly DiagnosticCode IndexNotPossible = Error("EXP012",
        "There is nothing to pick with an index", "leave the square brackets out");

    public static readonly DiagnosticCode UnknownIndex = Error("EXP013",
        "The index has no such value", "see the channel, fact or loop for its values");

    public static readonly DiagnosticCode NameIncomplete = Error("EXP014",
        "The name stops too early", "go on with a point and a name");

    public static readonly DiagnosticCode ResultMayBeMissing = Error("EXP015",
        "The step may have no result", "say with .or(…) what holds then");

    public static readonly DiagnosticCode NotJudgedBefore = Error("EXP016",
        "The step is not judged before this place", "say with .or(…) what holds as long as there is no result");

    public static readonly DiagnosticCode NoValue = Error("EXP017",
        "The step finds no value", "ask for its .verdict or .took");

    public static readonly DiagnosticCode NeverEqual = Error("EXP018",
        "A comparison that can never be true", "compare with one of the values");

    public static readonly DiagnosticCode UnitNeeded = Error("EXP019",
        "A quantity meets a bare number", "take its number with a unit by name");

    public static readonly DiagnosticCode DifferentDimensions = Error("EXP020",
        "Quantities of different dimensions", "compare and add quantities of one dimension");

    public static readonly DiagnosticCode CaretIsNoPower = Error("EXP021",
        "In C# ^ is no power", "write pow(x, 2)");

    public static readonly DiagnosticCode WholeDivision = Error("EXP022",
        "Two whole numbers are divided and the fraction is lost", "write one of them with a point, such as 2.0");

    public static readonly DiagnosticCode TextAndOther = Error("EXP023",
        "A text is put together with something else", "write $\"… {x}\", which is the same in every culture");

    public static readonly DiagnosticCode WrongKind = Error("EXP024",
        "The expression gives something else than its place wants", "see the language reference for what the key wants");

    public static readonly DiagnosticCode NumberForm = Error("EXP025",
        "A number in a form that expressions do not take", "write digits with a point; every number is a decimal");

    public static readonly DiagnosticCode TextFormat = Error("EXP026",
        "A format that expressions do not take", "write zeros for the digits wanted, such as {x:0.00}");

    public static readonly DiagnosticCode WrongOperands = Error("EXP027",
        "The operator does not fit what stands beside it", "compare like with like");

    public static readonly DiagnosticCode Circular = Error("EXP028",
        "Computed results depend on each other", "take one of them from a step before");

    public static readonly DiagnosticCode Compiler = Error("EXP029",
        "The C# compiler does not take the expression", "see its words");

    public static readonly DiagnosticCode UnknownTrace = Error("EXP050",
        "Nothing of this name is kept as a trace", "add the channel to  capture  of the group, or correct the name");

    public static readonly DiagnosticCode TraceNotEnded = Error("EXP051",
        "The trace is not complete before this place", "move the step behind the group");

    public static readonly DiagnosticCode TraceMayBeMissing = Error("EXP052",
        "There may be no trace", "put the group and the step into one group, and let that have the condition");

    public static readonly DiagnosticCode UnknownFeature = Error("EXP053",
        "A trace has no such feature", "see the language reference for the features; what wants a level takes the numbers with a unit first");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
