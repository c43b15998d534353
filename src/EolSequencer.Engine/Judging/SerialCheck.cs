using EolSequencer.Engine.Actions;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Engine.Judging;

/// <summary>Judges a value that is the serial of a part: a part is on one vehicle.</summary>
public static class SerialCheck
{
    /// <summary>Name of the criterion.</summary>
    public const string Criterion = "serial";

    private const int Longest = 80;

    private const string Expected = "on no other vehicle";

    /// <summary>The end of an attempt with what the serial found says; without a value it stays as it is.</summary>
    internal static AttemptEnd Of(IPartSerials serials, Vin vin, PlannedStep planned, SerialRule rule, AttemptEnd end)
    {
        if (end is not { Value: TextValue { Text: var serial }, Ending: Ending.ValueJudged or Ending.ValueTaken }) return end;
        var part = PartName.OfStep(planned.Id, rule.Part);
        if (Fault(serial) is { } fault) return With(end, "a serial", Verdict.Fail, fault);
        return serials.Elsewhere(vin, part, serial) switch
        {
            SerialAnswer.Nowhere => With(end, Expected, Verdict.Pass, end.Detail) with { Part = part },
            SerialAnswer.There there when there.Vin == vin.Text => With(end, Expected, Verdict.Fail, $"serial '{serial}' is on this vehicle already, as part {there.Part}, found in run {there.Run}"),
            SerialAnswer.There there => With(end, Expected, Verdict.Fail, $"serial '{serial}' of part {part} is on vehicle {there.Vin}, found in run {there.Run}"),
            SerialAnswer.Unknown unknown => With(end, Expected, Verdict.Error, $"whether serial '{serial}' is on another vehicle is not known: {unknown.Why}"),
            var other => throw new InvalidOperationException($"unknown answer {other}"),
        };
    }

    private static AttemptEnd With(AttemptEnd end, string expected, Verdict verdict, string? detail) => end with
    {
        Criteria = end.Criteria.Add(new CriterionResult(Criterion, ((TextValue)end.Value!).Text, null, expected, null, null, null, verdict, false) { IsText = true }),
        Detail = detail,
    };

    private static string? Fault(string serial) =>
        string.IsNullOrWhiteSpace(serial) ? "the serial is empty"
        : serial.Length > Longest ? $"the serial has {serial.Length} characters; {Longest} are the most"
        : serial.Any(char.IsControl) ? "the serial holds a character that cannot be seen"
        : null;
}
