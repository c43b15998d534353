using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>What is wrong with a file of expected results.</summary>
public static class ExpectedCodes
{
    public static readonly DiagnosticCode UnknownStep = Error("RES001",
        "A step that the sequence does not have", "compare with the ids in the sequence");

    public static readonly DiagnosticCode GroupOfSteps = Error("RES002",
        "A group where a step is wanted", "name its steps one by one");

    public static readonly DiagnosticCode NothingFound = Error("RES003",
        "A value expected of a step that finds none", "leave it out");

    public static readonly DiagnosticCode NotWritten = Error("RES004",
        "C# or a limit where a written value is wanted", "write the value itself: a test that computes what it expects proves nothing");

    public static readonly DiagnosticCode DoesNotRun = Error("RES005",
        "A value, time or cause expected of a step that is not to run", "keep one of the two");

    public static readonly DiagnosticCode NoVehicle = Error("RES006",
        "A test without a vehicle or a station", "write  order  or  vin , and  station , at the test or at the top of the file");

    public static readonly DiagnosticCode NoTests = Error("RES007",
        "A file of expected results without a test", "write at least one test under  tests");

    public static readonly DiagnosticCode NothingExpected = Error("RES008",
        "A step of which nothing is expected", "write a verdict behind it, or what it must be");

    public static readonly DiagnosticCode Contradiction = Error("RES009",
        "Expectations that no run can meet together", "change one of them");

    public static readonly DiagnosticCode UnknownFault = Error("RES010",
        "A fault that no simulated vehicle can have", "choose a fault point of simulators/README.md");

    public static readonly DiagnosticCode NotSimulated = Error("RES011",
        "A station without a simulated vehicle", "name a station whose devices are simulated");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
