using EolSequencer.Model.Judging;
using EolSequencer.Records.History;

namespace EolSequencer.Cli.Output;

/// <summary>What a vehicle has come to, for programs.</summary>
internal static class VehicleJson
{
    public static object Of(VehicleState vehicle) => new
    {
        vin = vehicle.Vin,
        corrections = vehicle.Corrections.Select(one => new { wrong = one.Wrong, right = one.Right, reason = one.Reason, by = one.By }),
        passed = vehicle.HasPassed,
        stationKinds = vehicle.Kinds.Select(kind => new
        {
            stationKind = kind.StationKind,
            passed = kind.HasPassed,
            firstTimeThrough = kind.IsFirstTimeThrough,
            run = kind.Run.Run,
            retests = kind.Retests.Select(retest => retest.Run),
            unfinished = kind.Unfinished,
            steps = kind.Steps.Select(step => new
            {
                step = step.Step,
                counted = step.Counted.Word(),
                first = step.First?.Word(),
                run = step.Run,
                value = step.Last?.ValueText,
                unit = step.Last?.Unit,
            }),
        }),
        parts = vehicle.Parts.Select(part => new
        {
            part = part.Name,
            serial = part.Serial,
            replaced = part.Replaced,
            found = part.Found,
            run = part.Run,
            step = part.Step,
        }),
    };
}
