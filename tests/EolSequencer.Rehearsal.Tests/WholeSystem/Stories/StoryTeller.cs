using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Rehearsal.Tests.Kit;
using EolSequencer.Rehearsal.Tests.WholeSystem.Storage;
using EolSequencer.Simulators;
using EolSequencer.Simulators.Faults;
using EolSequencer.Simulators.Randomness;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

/// <summary>Makes the story of a seed.</summary>
internal static class StoryTeller
{
    /// <summary>About how long a run on a good vehicle takes, in seconds.</summary>
    private const double UsualRun = 35;

    /// <summary>About how many operations of the disk a run on a good vehicle takes.</summary>
    private const int UsualOperations = 500;

    /// <summary>Faults that this sequence meets, so that most stories have something to tell.</summary>
    private static readonly string[] Telling =
    [
        "battery_voltage", "lamp_open=low_left", "lamp_open=tail_right", "wheel_speed=fl:0.4", "brake_switch_open", "pedal_travel", "write_refused", "write_lost", "plate_differs=stamp",
        "wrong_software=camera", "wrong_software=brakes", "unit_silent=brakes", "answers_late=gateway:0.4", "busy=gateway:2", "pends_for_ever=brakes", "short_answer=camera", "reads_refused=gateway",
        "session_refused=gateway", "outputs_refused=gateway", "outputs_kept=gateway", "meter_silent", "meter_overload", "meter_offset", "meter_zero_refused", "line_deaf", "shop_temperature",
    ];

    private static readonly string[] OfPeople =
        ["operator_slow", "operator_slow=8", "operator_leaves", "scans_other_label", "mixes_up_sides", "pedal_let_go", "ignores=body.hood", "ignores=doors.ajar", "misjudges=identity.plates", "ignores=identity.label"];

    private static readonly string[] OfDevices = ["bus_silent", "link_down", "bus_off", "unit_silent=gateway", "meter_silent", "line_deaf"];

    /// <summary>The same seed tells the same story.</summary>
    public static Story Of(ulong seed)
    {
        var chance = new RandomStream(seed, "story");
        var vehicles = ImmutableArray.CreateBuilder<VehicleStory>();
        var count = 2 + chance.Pick(2);
        for (var number = 1; number <= count; number++) vehicles.Add(Vehicle(chance, number, isLast: number == count));
        return new Story(seed, vehicles.DrainToImmutable());
    }

    private static VehicleStory Vehicle(RandomStream chance, int number, bool isLast)
    {
        var order = chance.Pick(DemoPlant.Orders.Count);
        var faults = ImmutableArray.CreateBuilder<string>();
        if (Happens(chance, 0.4)) faults.Add(Telling[chance.Pick(Telling.Length)] + (Happens(chance, 0.5) ? "" : At(chance)));
        if (Happens(chance, 0.2)) faults.Add(AnyFault(chance, order));
        if (Happens(chance, 0.3)) faults.Add(OfPeople[chance.Pick(OfPeople.Length)] + (Happens(chance, 0.5) ? "" : At(chance)));
        if (Happens(chance, 0.4)) faults.Add(DeviceLoss(chance));
        TimeSpan? stop = Happens(chance, 0.15) ? Moment(chance) : null;
        var clock = ImmutableArray.CreateBuilder<(TimeSpan, TimeSpan)>();
        while (Happens(chance, 0.25)) clock.Add((Moment(chance), ClockStep(chance)));
        return new VehicleStory(
            order, chance.Next(), faults.DrainToImmutable(), stop, clock.DrainToImmutable(), isLast || !Happens(chance, 0.75) ? null : Disk(chance), number > 1 && Happens(chance, 0.3));
    }

    private static DiskTrouble Disk(RandomStream chance)
    {
        var moment = 1 + chance.Pick(UsualOperations);
        return chance.Pick(4) switch
        {
            0 => new DiskTrouble.PowerLoss(moment),
            1 => new DiskTrouble.Killed(moment),
            2 => new DiskTrouble.Full(chance.Pick(200_000)),
            _ => new DiskTrouble.Failing(moment, 1 + chance.Pick(4)),
        };
    }

    private static string DeviceLoss(RandomStream chance)
    {
        var point = OfDevices[chance.Pick(OfDevices.Length)];
        var returns = FaultText.Parse(point).Fault!.Point.NumberIsOptional && Happens(chance, 0.6);
        return returns ? point + "=" + Number(chance.Between(0.05, 8)) + At(chance) : point + At(chance);
    }

    private static string AnyFault(RandomStream chance, int order)
    {
        var possible = FaultCatalogue.PossibleOn(VehicleFacts.Of(DemoPlant.Orders[order]).Options).ToList();
        return possible[chance.Pick(possible.Count)].ToString();
    }

    private static TimeSpan ClockStep(RandomStream chance)
    {
        var far = TimeSpan.FromSeconds(Math.Round(Math.Pow(10, chance.Between(0, 8))));
        return Happens(chance, 0.5) ? far : -far;
    }

    private static TimeSpan Moment(RandomStream chance) => TimeSpan.FromMilliseconds(Math.Round(chance.Between(1, 1000 * UsualRun)));

    private static string At(RandomStream chance) => $"@{Number(Moment(chance).TotalSeconds)}s";

    private static string Number(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);

    private static bool Happens(RandomStream chance, double share) => chance.Share() < share;
}
