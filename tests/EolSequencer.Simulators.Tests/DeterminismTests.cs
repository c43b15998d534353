namespace EolSequencer.Simulators.Tests;

/// <summary>A failing rehearsal can only be looked into when the same seed gives the same run.</summary>
public sealed class DeterminismTests
{
    [Fact]
    public void The_same_facts_seed_and_faults_give_the_same_words_at_the_same_moments() =>
        Assert.Equal(
            Examination.Of(Vans.Petrol, 42, Vans.Fault("lamp_open=low_left"), Vans.Fault("bus_silent=2@200s")),
            Examination.Of(Vans.Petrol, 42, Vans.Fault("lamp_open=low_left"), Vans.Fault("bus_silent=2@200s")));

    [Fact]
    public void Another_seed_gives_another_vehicle_and_another_person() =>
        Assert.NotEqual(Examination.Of(Vans.Electric, 42), Examination.Of(Vans.Electric, 43));

    [Fact]
    public void Nothing_changes_before_a_fault_begins()
    {
        var good = Examination.Of(Vans.Petrol, 5);
        var bad = Examination.Of(Vans.Petrol, 5, Vans.Fault("bus_silent@150s"));
        var same = good.Zip(bad).TakeWhile(pair => pair.First == pair.Second).Count();
        Assert.InRange(double.Parse(good[same].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture), 149_900, 152_100);
    }

    [Fact]
    public void A_fault_in_one_place_does_not_shift_chance_elsewhere()
    {
        // A dark lamp changes currents, but neither the person's pace nor any other measured value.
        var good = Answers(Examination.Of(Vans.Petrol, 5));
        var bad = Answers(Examination.Of(Vans.Petrol, 5, Vans.Fault("lamp_wet=tail_left")));
        Assert.Equal(good.Where(line => !line.Contains("lights.rear", StringComparison.Ordinal)), bad.Where(line => !line.Contains("lights.rear", StringComparison.Ordinal)));

        static IEnumerable<string> Answers(IReadOnlyList<string> log) => log.Where(line => line.Contains("Ok", StringComparison.Ordinal) || line.Contains("Text", StringComparison.Ordinal) || line.Contains(" A", StringComparison.Ordinal));
    }
}
