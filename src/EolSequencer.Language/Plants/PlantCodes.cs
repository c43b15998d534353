using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Plants;

/// <summary>What is wrong with a plant's folder or its <c>plant.yaml</c>.</summary>
public static class PlantCodes
{
    public static readonly DiagnosticCode NoPlant = Error("PLT001",
        "The file belongs to no plant", "put a plant.yaml into the folder that holds all files of the plant");

    public static readonly DiagnosticCode DuplicateId = Error("PLT002",
        "Two files of one kind have the same id", "give one of them another id");

    public static readonly DiagnosticCode UnknownKind = Error("PLT003",
        "The file does not begin with its kind", "begin it with  plant:  vehicle-type:  device-kind:  station:  sequence:  fragment:  order:  operator-script:  or  expected-results:");

    public static readonly DiagnosticCode WrongKind = Error("PLT004",
        "A file of another kind stands where this kind is wanted", "name a file of the wanted kind");

    public static readonly DiagnosticCode UnknownFile = Error("PLT005",
        "No file of the plant has this id", "check the id; files refer to each other by id, never by path");

    public static readonly DiagnosticCode TooManyFiles = Error("PLT006",
        "The plant's folder holds too many files", "keep data folders and builds outside the plant's folder");

    public static readonly DiagnosticCode UnknownZone = Error("PLT010",
        "A time zone that nobody knows", "write an IANA name such as  Europe/Berlin");

    public static readonly DiagnosticCode BadTimeOfDay = Error("PLT011",
        "Not a time of day", "write hours and minutes in quotes:  '06:00'");

    public static readonly DiagnosticCode ShiftsOverlap = Error("PLT012",
        "Two shifts at the same time", "let one shift end where the next begins");

    public static readonly DiagnosticCode StopTwice = Error("PLT013",
        "A station kind stands twice in the route", "keep one of the two");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
