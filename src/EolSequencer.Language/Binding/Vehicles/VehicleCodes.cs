using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>What is wrong with a vehicle type.</summary>
public static class VehicleCodes
{
    public static readonly DiagnosticCode UnknownUnit = Error("VEH001",
        "A control unit that the vehicle type does not have", "name one of its control units, or  ecus  for all of them");

    public static readonly DiagnosticCode OptionType = Error("VEH002",
        "An option of a type that options cannot have", "write  one-of: [..]  or  as: yes-no");

    public static readonly DiagnosticCode NobodyBuilt = Error("VEH003",
        "No vehicle of this type is possible", "take a combination out of  impossible");

    public static readonly DiagnosticCode AddressShared = Error("VEH004",
        "Two control units share an address", "give each control unit addresses of its own");

    public static readonly DiagnosticCode SourceWanted = Error("VEH005",
        "A channel that does not say how it is obtained", "add one of  data, routine, service, obd, frame");

    public static readonly DiagnosticCode ActWanted = Error("VEH006",
        "An action that does not say how it is done", "add one of  control, write, routine, service");

    public static readonly DiagnosticCode RawType = Error("VEH007",
        "A raw type that cannot stand here", "choose one of the types that are listed");

    public static readonly DiagnosticCode BadBits = Error("VEH008",
        "Bits that cannot be", "write  FIRST+COUNT  such as  16+8  or the number of a single bit");

    public static readonly DiagnosticCode BitsCross = Error("VEH009",
        "Bits that big byte order cannot read", "begin a field of several bytes at a multiple of 8 and fill whole bytes, or add  byte-order: little");

    public static readonly DiagnosticCode BitsDiffer = Error("VEH010",
        "The number of bits does not fit the type", "let all indexes have as many bits as the type");

    public static readonly DiagnosticCode ScaleOfNoNumber = Error("VEH011",
        "A scale on something that is no number", "leave  scale  and  offset  out");

    public static readonly DiagnosticCode OffsetUnit = Error("VEH012",
        "An offset in another unit than the scale", "write both in one unit");

    public static readonly DiagnosticCode ZeroScale = Error("VEH013",
        "A scale of zero", "write how much one bit is worth");

    public static readonly DiagnosticCode IndexTwice = Error("VEH014",
        "Two ways to index one channel", "keep  by  or the names in  bits");

    public static readonly DiagnosticCode WhichUnit = Error("VEH015",
        "It is not said which control unit is asked", "name one behind  from,  or add  by: ecus");

    public static readonly DiagnosticCode UnknownObd = Error("VEH016",
        "An OBD parameter that this program does not decode", "read it by a data identifier, or choose another parameter");

    public static readonly DiagnosticCode UnitMissing = Error("VEH017",
        "Something of a control unit on a vehicle that does not have the unit", "let  when  allow only vehicles with the control unit");

    public static readonly DiagnosticCode AccessLevel = Error("VEH018",
        "An access level that cannot be", "write  level-1  to  level-65");

    public static readonly DiagnosticCode Sampled = new("VEH019", Severity.Information,
        "More combinations of options than are tried one by one", "combine options that always come together");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
