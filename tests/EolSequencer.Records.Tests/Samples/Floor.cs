using System.Collections.Immutable;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.People;
using EolSequencer.Records.Release;
using EolSequencer.Records.Stations;

namespace EolSequencer.Records.Tests.Samples;

/// <summary>A shop floor: a crew of every role, and a station that runs vehicles.</summary>
internal sealed class Floor : IDisposable
{
    public static readonly ImmutableArray<string> Route = ["startup"];

    public Floor() => Station = Crew.Folder.Take();

    public Crew Crew { get; } = new(("opal", [Role.Operator]), ("rita", [Role.Repairer]), ("edda", [Role.Engineer]), ("quinn", [Role.Quality]), ("quade", [Role.Quality]));

    public StationHold Station { get; }

    public NonconformityService Office => Crew.Office.Nonconformities;

    public RecordFolder Record => Crew.Folder.OpenToRead();

    public string Run(params (string Step, Verdict Counted)[] found) => Story.Run(Station, found);

    public string Retest(string of, params (string Step, Verdict Counted)[] found) => Story.Run(Station, found, of: of);

    /// <summary>The one nonconformity that is open.</summary>
    public Nonconformity Open => Assert.Single(Record.Nonconformities.List());

    public Nonconformity Find(string id) => Record.Nonconformities.List(all: true).Single(one => one.Id == id);

    public Readiness Ready => Record.Releases.Of(SampleRun.Vin, Route);

    public Outcome<Readiness> Release(string by = "quinn") => Crew.Office.Releases.Sign(Crew[by], SampleRun.Vin, Route);

    public void Dispose()
    {
        Station.Dispose();
        Crew.Dispose();
    }
}
