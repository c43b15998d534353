using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Binding.Stations;

/// <summary>What is wrong with a station file, or between it and a sequence.</summary>
public static class StationCodes
{
    public static readonly DiagnosticCode NoAdapter = Error("STA001",
        "A device without an adapter", "add  adapter: NAME");

    public static readonly DiagnosticCode BadDate = Error("STA002",
        "Not a date", "write year, month and day:  2027-03-31");

    public static readonly DiagnosticCode DataInPlant = Error("STA003",
        "The data folder lies inside the plant's folder", "keep records outside of what is edited and versioned");

    public static readonly DiagnosticCode WiredToUnknown = Error("STA004",
        "An instrument is wired to a device that the station does not have", "name another device of this station");

    public static readonly DiagnosticCode RoleUnbound = Error("STA005",
        "The station has no adapter for a device of the sequence", "add the device to  devices  of the station");

    public static readonly DiagnosticCode OtherKind = Error("STA006",
        "The sequence belongs to another station kind", "run it at a station of its kind");

    public static readonly DiagnosticCode NoSequence = Error("STA007",
        "No sequence in force for the vehicle at this station", "write one for this vehicle type and station kind, or send the vehicle to a station that tests it");

    public static readonly DiagnosticCode SeveralSequences = Error("STA008",
        "More than one sequence in force for the vehicle at this station", "keep one of them in the plant's folder, or name the one to run");

    public static readonly DiagnosticCode NoCheck = Error("STA009",
        "The station cannot be checked like this", "name a sequence for the station's kind, and a reference of the vehicle type that it tests");

    public static readonly DiagnosticCode BadAddress = Error("STA010",
        "Nobody can be asked for orders like this", "write  url: https://HOST/PATH/{vin}");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
