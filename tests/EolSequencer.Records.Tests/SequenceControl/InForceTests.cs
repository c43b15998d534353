using EolSequencer.Model.Events;
using EolSequencer.Records.Administration;
using EolSequencer.Records.SequenceControl;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.SequenceControl;

/// <summary>At every moment it is clear which text a vehicle is judged by, and nobody has to be asked.</summary>
public sealed class InForceTests : IDisposable
{
    private const string First = SampleRun.Vin;
    private const string Other = "9Z9RR1N42TF000018";

    private readonly Floor _floor = new();

    [Fact]
    public void Nothing_is_in_force_before_it_was_approved()
    {
        Assert.Null(At());
        Crew.Done(_floor.Crew.Office.Approvals.Submit(_floor.Crew["edda"], SampleSequence.Of(1), "first issue"));
        Assert.Null(At());
        Crew.Done(_floor.Crew.Office.Approvals.Give(_floor.Crew["quinn"], "draft-000001", ApprovalScope.Everywhere, "read"));
        Assert.Equal(1, At());
    }

    [Fact]
    public void It_is_for_its_vehicle_type_and_station_kind()
    {
        Approve(1);

        Assert.Null(At(type: "crate"));
        Assert.Null(At(kind: "roller"));
        Assert.Equal(1, At(station: "startup_9"));
    }

    [Fact]
    public void One_station_only()
    {
        Approve(1);
        Approve(2, ApprovalScope.Everywhere with { Station = "startup_2" });

        Assert.Equal(2, At(station: "startup_2"));
        Assert.Equal(1, At(station: "startup_1"));
    }

    [Fact]
    public void From_a_moment_on_which_counts_itself()
    {
        Approve(1);
        var from = Now.AddDays(6);
        Approve(2, ApprovalScope.Everywhere with { From = from });

        Assert.Equal(1, At(moment: from.AddTicks(-1)));
        Assert.Equal(2, At(moment: from));
    }

    [Fact]
    public void Of_several_the_one_given_last_wins_also_over_one_that_was_to_begin_later()
    {
        Approve(1, ApprovalScope.Everywhere with { From = Now.AddDays(6) });
        Approve(2);

        Assert.Equal(2, At());
        Assert.Equal(2, At(moment: Now.AddDays(7)));
    }

    [Fact]
    public void A_trial_goes_before_a_newer_one_for_all_and_is_for_its_vehicles_only()
    {
        Approve(2, ApprovalScope.Everywhere with { Vins = [Other] });
        Approve(1);

        Assert.Equal(2, At(vin: Other));
        Assert.Equal(1, At(vin: First));
    }

    [Fact]
    public void A_withdrawn_one_gives_way_to_the_one_before()
    {
        Approve(1);
        var newer = Approve(2);
        Crew.Done(_floor.Crew.Office.Approvals.Withdraw(_floor.Crew["quinn"], newer, "misses a lamp"));
        Assert.Equal(1, At());

        Crew.Done(_floor.Crew.Office.Approvals.Withdraw(_floor.Crew["quinn"], "approval-000001", "misses it too"));
        Assert.Null(At());
    }

    [Fact]
    public void From_a_vehicle_on_means_its_first_production_run_at_the_station_kind()
    {
        Approve(1);
        Approve(2, ApprovalScope.Everywhere with { FromVehicle = First });
        Assert.Equal((2, 1), (At(vin: First), At(vin: Other)));

        Story.Run(_floor.Station, [("lamp", Pass)], mode: RunMode.Rehearsal);
        Story.Run(_floor.Station, [("lamp", Pass)], kind: "roller");
        Story.Run(_floor.Station, [("lamp", Pass)], vin: Other);
        Assert.Equal(1, At(vin: Other));

        Story.Run(_floor.Station, [("lamp", Pass)], ends: false);
        Assert.Equal((2, 2), (At(vin: First), At(vin: Other)));
    }

    [Fact]
    public void A_vehicle_that_was_run_already_begins_nothing()
    {
        Story.Run(_floor.Station, [("lamp", Pass)]);
        Crew.Done(_floor.Crew.Office.Approvals.Submit(_floor.Crew["edda"], SampleSequence.Of(1), "first issue"));

        Assert.Contains("has had its run there already", _floor.Crew.Refused(
            Refusal.AgainstRule, () => _floor.Crew.Office.Approvals.Give(_floor.Crew["quinn"], "draft-000001", ApprovalScope.Everywhere with { FromVehicle = First }, "read")));
        Crew.Done(_floor.Crew.Office.Approvals.Give(_floor.Crew["quinn"], "draft-000001", ApprovalScope.Everywhere with { FromVehicle = First, Station = "startup_2" }, "it has not been at that one"));
    }

    [Fact]
    public void A_text_stands_while_one_approval_of_it_is_not_withdrawn()
    {
        var older = Approve(1);
        Approve(2);
        var (approvals, query) = (_floor.Record.Approvals, Query("orrin", "startup", "startup_1", First, Now));
        var hash = ContentHash.Of(SampleSequence.Of(1).Sources);

        Assert.Equal(older, approvals.Standing(hash, query)?.Id);
        Assert.Null(approvals.Standing(ContentHash.Of(SampleSequence.Of(3).Sources), query));
        Crew.Done(_floor.Crew.Office.Approvals.Withdraw(_floor.Crew["quinn"], older, "misses a lamp"));
        Assert.Null(approvals.Standing(hash, query));
    }

    public void Dispose() => _floor.Dispose();

    private DateTimeOffset Now => _floor.Crew.Clock.Now;

    private string Approve(int revision, ApprovalScope? scope = null)
    {
        var draft = Crew.Done(_floor.Crew.Office.Approvals.Submit(_floor.Crew["edda"], SampleSequence.Of(revision), "an issue"));
        return Crew.Done(_floor.Crew.Office.Approvals.Give(_floor.Crew["quinn"], draft.Id, scope ?? ApprovalScope.Everywhere, "read")).Id;
    }

    /// <summary>The revision in force.</summary>
    private int? At(string type = "orrin", string kind = "startup", string station = "startup_1", string vin = First, DateTimeOffset? moment = null) =>
        _floor.Record.Approvals.InForce(Query(type, kind, station, vin, moment ?? Now))?.Revision;

    private static ApprovalQuery Query(string type, string kind, string station, string vin, DateTimeOffset moment) => new(type, kind, station, vin, moment);
}
