namespace EolSequencer.OutsideProof.Tests.Schema;

/// <summary>The codes, at least one fault of which a schema cannot see, each with the reason.</summary>
internal static class SchemaLimits
{
    private const string Expression = "C# is text for a schema";
    private const string Advice = "it is no fault, only not meant perhaps, and takes the whole sequence to see";
    private const string Elsewhere = "what is named stands elsewhere: in another place of the file, or in another file";
    private const string Meaning = "the values fit each by itself and not together";
    private const string TypedElsewhere = "of what type the value must be is said by a device, fragment, option or fact";
    private const string Outside = "it needs the world outside: files, time zones, check digits, the tables of a standard";
    private const string Vehicles = "it is found by trying the vehicles that can be built";
    private const string Sibling = "whether the key may or must be there goes by the value of another";

    public static IReadOnlyDictionary<string, string> Reasons { get; } = new (string Reason, string Codes)[]
    {
        (Expression, "EXP004 EXP006 EXP015 EXP016 EXP018 EXP024 EXP050 EXP051 EXP052 EXP053"),
        (Advice, "ADV001 ADV002 ADV003 ADV004 ADV005 ADV006 ADV007 ADV008 ADV010 ADV011 ADV020"),
        (Elsewhere, "LIM001 LIM002 LIM004 LIM005 LIM006 NAM003 NAM004 ORD003 ORD004 ORD006 ORD007 ORD010 PLT004 PLT005 PLT013 SEQ003 SEQ010 SEQ011 SEQ012 SEQ013 SEQ014 SEQ015 SEQ016 " +
            "SEQ017 SEQ018 SEQ019 SEQ020 SEQ021 SEQ022 SEQ026 SEQ027 SEQ030 SEQ031 SEQ032 SEQ035 SEQ037 SEQ038 SEQ040 SEQ045 SEQ046 SEQ049 SEQ063 SEQ066 STA004 STA005 STA006 STA009 SYN018 RES001 RES002 VEH001 VEH002 VEH004"),
        (Meaning, "RES004 RES005 RES008 RES009 PLT012 SEQ005 SEQ006 SEQ023 SEQ024 STA010 VEH007 VEH008 VEH009 VEH010 VEH011 VEH012 VEH013 VEH014 VEH015 WIN003 WIN015"),
        (TypedElsewhere, "RES003 SEQ042 SEQ047 SYN013 SYN015 TYP001 UNT002 UNT004 WIN012 WIN013 WIN014"),
        (Outside, "DEV001 ORD001 PLT010 SEQ033 SEQ034 STA003 VEH016"),
        (Vehicles, "LIM011 LIM012 ORD005 ORD008 SEQ060 SEQ061 SEQ062 SEQ065 VEH003 VEH017 VEH019"),
        (Sibling, "DEV002 DEV003 SEQ025 SEQ041 SEQ043 SEQ044 SEQ048 SEQ064 SYN001 SYN002 SYN004 RES006"),
    }.SelectMany(row => row.Codes.Split(' ').Select(code => (code, row.Reason))).ToDictionary(pair => pair.code, pair => pair.Reason, StringComparer.Ordinal);
}
