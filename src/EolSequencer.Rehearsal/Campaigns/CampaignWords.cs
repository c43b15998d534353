using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>How kinds and classes read in a campaign's file and report.</summary>
public static class CampaignWords
{
    public static string Of(StepClass @class) => @class switch
    {
        StepClass.Safety => "safety",
        StepClass.Function => "function",
        _ => "other",
    };

    public static string Of(FaultKind kind) => kind switch
    {
        FaultKind.OpenCircuit => "open circuit",
        FaultKind.SilentUnit => "silent unit",
        FaultKind.WrongCoding => "wrong coding",
        FaultKind.WrongPart => "wrong part",
        FaultKind.OperatorError => "operator error",
        var other => other.ToString().ToLowerInvariant(),
    };
}
