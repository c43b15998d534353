using EolSequencer.Records.Administration;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.Administration;

/// <summary>Who did what can be asked by person, vehicle, kind and time.</summary>
public sealed class ActReaderTests : IDisposable
{
    private const string Second = "TESTVXN09AA000018";

    private readonly Floor _floor = new();

    [Fact]
    public void Acts_about_a_vehicle_are_those_that_name_it_and_what_was_found_on_it_under_all_its_numbers()
    {
        _floor.Run(("lamp", Fail));
        Story.Run(_floor.Station, [("lamp", Fail)], vin: "TESTVXN02AA000020");
        Crew.Done(_floor.Office.Rework(_floor.Crew["rita"], "nc-000001", "bulb", []));
        Crew.Done(_floor.Crew.Office.Holds.Place(_floor.Crew["quinn"], new HoldQuery([SampleRun.Vin]), "look"));
        Crew.Done(_floor.Crew.Office.Holds.Lift(_floor.Crew["quinn"], "hold-0001", "looked"));
        Crew.Done(_floor.Crew.Office.Vins.Correct(_floor.Crew["quinn"], SampleRun.Vin, Second, "misread", false));

        foreach (var vin in (string[])[SampleRun.Vin, Second])
        {
            Assert.Equal(["vin-corrected", "hold-lifted", "hold-placed", "repair-done", "nonconformity-opened"], List(new() { Vin = vin }).Select(act => act.Act));
        }

        Assert.Empty(List(new() { Vin = "TESTVXN05AA000030" }));
        Assert.Empty(List(new() { Vin = "%" }));
        Assert.Empty(List(new() { Vin = "' OR 1=1 --" }));
    }

    [Fact]
    public void Acts_are_asked_by_person_kind_and_time_newest_first_page_by_page()
    {
        _floor.Run(("lamp", Fail));
        _floor.Crew.Clock.Now = _floor.Crew.Clock.Now.AddHours(1);
        Crew.Done(_floor.Office.Concede(_floor.Crew["edda"], _floor.Crew["quinn"], "nc-000001", "does not show"));

        Assert.Equal(["concession-given"], List(new() { By = "edda" }).Select(act => act.Act));
        Assert.Equal(["concession-given"], List(new() { By = "quinn" }).Select(act => act.Act));
        Assert.Equal("does not show", List(new() { Act = "concession-given" }).Single().About.GetProperty("reason").GetString());
        Assert.Equal(["concession-given"], List(new() { From = _floor.Crew.Clock.Now }).Select(act => act.Act));
        Assert.DoesNotContain("concession-given", List(new() { Until = _floor.Crew.Clock.Now }).Select(act => act.Act));

        var all = List(new());
        Assert.Equal(all.Select(act => act.N).OrderDescending(), all.Select(act => act.N));
        var first = List(new() { Most = 2 });
        Assert.Equal(all.Skip(2).Select(act => act.N), List(new() { Before = first[^1].N }).Select(act => act.N));
    }

    private IReadOnlyList<RecordedAct> List(ActFilter filter) => _floor.Record.Acts.List(filter);

    public void Dispose() => _floor.Dispose();
}
