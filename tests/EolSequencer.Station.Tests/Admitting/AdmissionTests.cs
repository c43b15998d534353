using EolSequencer.Language.Expressions;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records;
using EolSequencer.Records.Administration;
using EolSequencer.Records.People;
using EolSequencer.Records.Stations;
using EolSequencer.Station.Admitting;
using EolSequencer.Station.Identifying;
using EolSequencer.Station.Tests.Identifying;

namespace EolSequencer.Station.Tests.Admitting;

/// <summary>A run that counts begins only on a vehicle that has come its way up to there; a rehearsal always.</summary>
public sealed class AdmissionTests : IDisposable
{
    private const string Other = "TESTVXN09AA000018";
    private const string Secret = "973158";

    private readonly SmallPlant _plant = new();
    private readonly DirectoryInfo _data = Directory.CreateTempSubdirectory("admission-");
    private readonly DataFolder _folder;
    private readonly StationHold _station;
    private readonly IdentifiedVehicle _vehicle;

    public AdmissionTests()
    {
        _folder = ((FolderResult<DataFolder>.Opened)DataFolder.Open(_data.FullName, TimeProvider.System)).Folder;
        _station = ((StationResult.Taken)_folder.TakeStation("bench")).Station;
        PutRoute("torque, water, startup");
        _vehicle = Identified("needs: [torque, water]");
    }

    [Fact]
    public void What_must_be_passed_before_is_named_with_what_is_missing()
    {
        Assert.Equal(["station kind 'torque' comes first: the vehicle was never run there as a whole", "station kind 'water' comes first: the vehicle was never run there as a whole"], Against());

        Write("torque", Verdict.Pass);
        Write("water", Verdict.Fail);
        Assert.Equal(["station kind 'water' comes first: lamp did not pass"], Against());

        Write("water", Verdict.Pass);
        Assert.Empty(Against());
        Write("torque", Verdict.Pass, ends: false);
        Assert.Equal(["station kind 'torque' comes first: run bench-000004 has not ended"], Against());
    }

    [Fact]
    public void A_run_of_some_steps_and_one_that_judged_nothing_pass_no_station_kind()
    {
        Write("torque", Verdict.None);
        Write("water", Verdict.Pass, only: ["lamp"]);

        Assert.Equal(["station kind 'torque' comes first: run bench-000001 judged nothing", "station kind 'water' comes first: the vehicle was never run there as a whole"], Against());
    }

    [Fact]
    public void A_concession_counts_as_passed()
    {
        Write("torque", Verdict.Fail);
        Write("water", Verdict.Pass);
        var (edda, quinn) = (SignIn("edda", Role.Engineer), SignIn("quinn", Role.Quality));
        Assert.True(Office.Nonconformities.Concede(edda, quinn, "nc-000001", "does not show").IsDone);

        Assert.Empty(Against());
    }

    [Fact]
    public void What_vehicles_of_this_order_do_not_come_to_is_not_asked_for()
    {
        PutRoute("startup, { station-kind: torque, when: vehicle.tow }");
        var vehicle = Identified("needs: [torque]");

        Assert.Empty(Admission.Of(_folder.Record, vehicle, RunMode.Production).Against);
    }

    [Fact]
    public void A_rehearsal_is_let_in_and_says_what_it_did_not_ask()
    {
        var admission = Admission.Of(_folder.Record, _vehicle, RunMode.Rehearsal);

        Assert.Empty(admission.Against);
        Assert.Equal("before 'brief' a vehicle must have passed torque, water; a rehearsal does not ask for that", Assert.Single(admission.Notes));
    }

    [Fact]
    public void A_number_that_was_corrected_identifies_no_vehicle_any_more()
    {
        Write("torque", Verdict.Pass);
        Assert.True(Office.Vins.Correct(SignIn("quinn", Role.Quality), SmallPlant.Vin, Other, "misread", false).IsDone);

        Assert.Equal($"{SmallPlant.Vin} was corrected to {Other}; identify the vehicle by that number", Assert.Single(Against()));
    }

    [Fact]
    public void A_released_vehicle_and_another_order_are_told()
    {
        Write("startup", Verdict.Pass, order: _vehicle.Order with { Options = _vehicle.Order.Options.SetItem("tow", TruthValue.Yes) });
        Assert.True(Office.Releases.Sign(SignIn("quinn", Role.Quality), SmallPlant.Vin, ["startup"]).IsDone);

        Assert.Equal(
            [$"{SmallPlant.Vin} was released; with this run it has returned and must be released anew", "the order is another one than in run bench-000001: tow: 'yes' → 'no'"],
            Admission.Of(_folder.Record, _vehicle, RunMode.Production).Notes);
    }

    private RecordAdministration Office => _folder.Administer(_ => { });

    private SignedIn SignIn(string badge, Role role)
    {
        if (_folder.Record.People.List().IsEmpty) Office.People.AddFirst("adm", "Ada Invented", Secret);
        Office.People.Add(Office.SignIn.With("adm", Secret).Value!, badge, badge, [role], Secret);
        return Office.SignIn.With(badge, Secret).Value!;
    }

    private IdentifiedVehicle Identified(string needs)
    {
        _plant.Put("brief.yaml", SmallPlant.Sequence("brief", "box", "startup").Replace("devices:", $"{needs}\ndevices:", StringComparison.Ordinal));
        var found = Identify.Vehicle(new IdentifyRequest { StationFile = _plant.PathOf("station.yaml"), Vin = SmallPlant.Vin, Cache = ExpressionCache.In(Path.Combine(_data.FullName, "cache")) });
        Assert.True(found.Vehicle is not null, string.Join('\n', found.Diagnostics));
        return found.Vehicle;
    }

    private void PutRoute(string route) => _plant.Put("plant.yaml", $"plant: small\ntitle: Small\nzone: Etc/UTC\nday-starts: '06:00'\nroute: [{route}]\n");

    private IEnumerable<string> Against() => Admission.Of(_folder.Record, _vehicle, RunMode.Production).Against;

    private void Write(string kind, Verdict counted, bool ends = true, string[]? only = null, Order? order = null)
    {
        var journal = _station.BeginRun();
        journal.Append(new RunBegun
        {
            N = 1, At = 0, Run = journal.Run, Plant = "small", Station = "bench", StationKind = kind, Sequence = "brief", Revision = 1, Order = order ?? _vehicle.Order, Sources = [], Compiled = "",
            Program = "test", Mode = RunMode.Production, Zone = "Etc/UTC", Wall = DateTimeOffset.UnixEpoch, Planned = 1, OnlySteps = [.. only ?? []],
        });
        journal.Append(new Judged { N = 2, At = 1000, Step = "lamp", Attempt = 1, Start = 0, Took = 1000, Measured = counted, Counted = counted });
        if (ends) journal.Append(new RunEnded { N = 3, At = 2000, RollUp = RollUp.Of([counted]), Interrupted = false, NotReached = [], NotCounted = [] });
    }

    public void Dispose()
    {
        _station.Dispose();
        _plant.Dispose();
        _data.Delete(recursive: true);
    }
}
