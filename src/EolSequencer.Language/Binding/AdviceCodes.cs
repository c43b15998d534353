using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Binding;

/// <summary>What runs and is probably not meant: found when a plant is checked, not when a vehicle is tested.</summary>
public static class AdviceCodes
{
    public static readonly DiagnosticCode ValueUnused = Warning("ADV001",
        "A value that is neither judged nor used", "add  expect,  or  record-only: true,  or leave the step out");

    public static readonly DiagnosticCode MayWaitForEver = Warning("ADV002",
        "A step that may wait for ever", "add  within: 30 s  or another time limit, at the step or in  defaults");

    public static readonly DiagnosticCode NeverApplies = Warning("ADV003",
        "A condition that holds for no vehicle", "correct  when,  or leave out what never runs");

    public static readonly DiagnosticCode AlwaysApplies = Information("ADV004",
        "A condition that holds for every vehicle that comes here", "leave  when  out");

    public static readonly DiagnosticCode RowNeverApplies = Warning("ADV005",
        "A row of a limit that holds for no vehicle", "correct  when,  or leave the row out");

    public static readonly DiagnosticCode SharedDevice = Information("ADV006",
        "Branches that share an exclusive device", "let one branch have the device, or put these steps one after the other");

    public static readonly DiagnosticCode SharedPerson = Information("ADV007",
        "Branches that both ask a person", "let one branch have the prompts, or put these steps one after the other");

    public static readonly DiagnosticCode CycleTooLong = Warning("ADV008",
        "More planned time than the cycle allows", "let steps run together, shorten them, or plan more  cycle-time");

    public static readonly DiagnosticCode DeviceUnused = Warning("ADV010",
        "A device that no step uses", "leave it out of  devices");

    public static readonly DiagnosticCode ParameterUnused = Warning("ADV011",
        "A parameter that nothing names", "name it, or leave it out");

    public static readonly DiagnosticCode LimitUnused = Warning("ADV012",
        "A limit that no step uses", "use it as  expect: limits.NAME,  or leave it out");

    public static readonly DiagnosticCode FragmentUnused = Warning("ADV013",
        "A fragment that nothing uses", "use it in a group with  use,  or delete the file");

    public static readonly DiagnosticCode KindUnused = Warning("ADV014",
        "A device kind that nothing uses", "name it in  devices  of a sequence, or delete the file");

    public static readonly DiagnosticCode LanguageMissing = Warning("ADV020",
        "A text that lacks one of the plant's languages", "write the text in every language of  languages  in plant.yaml");

    private static DiagnosticCode Warning(string id, string title, string cure) => new(id, Severity.Warning, title, cure);

    private static DiagnosticCode Information(string id, string title, string cure) => new(id, Severity.Information, title, cure);
}
