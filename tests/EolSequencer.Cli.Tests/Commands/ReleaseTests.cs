using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;
using EolSequencer.Model.Events;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>From a failed step to a vehicle that may leave, as people at a line type it.</summary>
public sealed class ReleaseTests : IDisposable
{
    private const string Vin = "GFVRRNFP7VF100231";
    private const string Right = "GFVRRNFP9VF100232";
    private const string Secret = "973158";

    private readonly Eol _eol = new();
    private readonly Eol _rehearsals = new();

    [Fact]
    public void A_failed_step_is_reworked_tested_again_and_the_vehicle_released_by_quality()
    {
        Assert.Equal(1, _rehearsals.Startup("--inject", "lamp_open=tail_left").Code);
        Assert.Equal(0, _rehearsals.Startup().Code);
        var (bad, good) = (ProductionRecord.Rehearsed(_rehearsals.Data, "startup_1-000001"), ProductionRecord.Rehearsed(_rehearsals.Data, "startup_1-000002"));
        var record = new ProductionRecord(_eol.Data);
        record.Write((RunBegun)bad[0], bad, "startup");
        AddCrew();

        Says(1, "station kind 'torque' of the route: never run as a whole", "release", Vin, "--check");
        Says(0, "lamps.current", "nonconformity", "list", "--vin", Vin);
        As(0, "is reworked", "rita", "repair", "nc-000001", "--what", "bulb changed", "--part", "bulb=B-77");
        As(1, "wants the role repairer or engineer", "quinn", "repair", "nc-000001", "--what", "bulb changed");
        As(1, "cannot be released", "quinn", "release", Vin);

        Says(0, "operator: run it at torque", "board");
        Says(0, "nonconformity nc-000001 (lamps.current) is reworked → operator: retest it at startup", "board");
        Says(2, "--most counts from 1", "board", "--most", "0");
        using (var board = JsonDocument.Parse(Look("board", "--json"))) Assert.Equal(1, board.RootElement.GetProperty("InAll").GetInt32());

        record.Write((RunBegun)good[0], good, "startup");
        Assert.DoesNotContain("nc-0", Look("nonconformity", "list"), StringComparison.Ordinal);
        foreach (var kind in Kinds()) record.Write((RunBegun)good[0], good, kind);
        As(1, "wants the role quality", "rita", "release", Vin);
        As(0, "hold-0001 (bulbs of that lot)", "quinn", "hold", "place", "--vin", Vin, "--reason", "bulbs of that lot");
        As(1, "hold hold-0001", "quinn", "release", Vin);
        As(0, "is lifted", "quinn", "hold", "lift", "hold-0001", "--reason", "bulbs measured");
        As(0, "is released", "quinn", "release", Vin);
        As(1, "is released already, by quinn", "quinn", "release", Vin);
        Assert.Equal(0, Eol.Run("verify", "--data", _eol.Data).Code);

        As(2, "the plant's catalogue has no nonconformity 'dirt'; it has vin_plate_differs", "rita", "nonconformity", "open", Vin, "--code", "dirt", "--note", "seen");
        As(2, "'leak' is never at 'roof' by the plant's catalogue; write one of coolant", "rita", "nonconformity", "open", Vin, "--code", "leak", "--place", "roof", "--note", "seen");
        As(0, "is open", "rita", "nonconformity", "open", Vin, "--code", "scratch", "--place", "left door", "--note", "seen on the lorry");
        using (var json = JsonDocument.Parse(Look("release", Vin, "--check", "--json"))) Assert.Equal("returned", json.RootElement.GetProperty("State").GetString());
        Together(1, "second person", "quinn", "quinn");
        Together(0, "is conceded", "edda", "quinn");
        As(0, "is released", "quinn", "release", Vin);

        As(1, "wants the role quality", "rita", "vin", "correct", Vin, Right, "--reason", "misread");
        As(0, $"{Vin} is corrected to {Right}", "quinn", "vin", "correct", Vin, Right, "--reason", "misread");
        Says(0, $"{Vin} was corrected to {Right} by quinn: misread", "vehicle", Vin);
        Says(0, $"{Vin} → {Right}, by quinn: misread", "vin", "list");
        Says(0, "nothing keeps it: quality can release it", "board");
        As(1, $"was corrected to {Right}", "quinn", "release", Vin);
        As(0, "is released", "quinn", "release", Right);

        Says(0, "every vehicle that was run is released", "board");
        Says(0, "rita  repair-done", "acts", "--vin", Right);
        Says(0, "release-signed", "acts", "--person", "quinn", "--from", "2020-01-01T00:00Z");
        Says(2, "is no moment", "acts", "--until", "yesterday");
        using (var acts = JsonDocument.Parse(Look("acts", "--act", "repair-done", "--json"))) Assert.Equal("bulb changed", acts.RootElement[0].GetProperty("About").GetProperty("what").GetString());
    }

    [Theory]
    [InlineData("release", "../../etc/passwd")]
    [InlineData("nonconformity", "open", "' OR 1=1 --", "--code", "scratch", "--note", "x")]
    [InlineData("nonconformity", "open", Vin, "--code", "a b", "--note", "x")]
    [InlineData("nonconformity", "open", Vin, "--code", "scratch", "--note", "two\nlines")]
    [InlineData("nonconformity", "inspect", "nc-000001", "--found", "perhaps", "--note", "x")]
    [InlineData("repair", "nc-000001", "--what", "x", "--part", "no serial")]
    [InlineData("repair", "nc-000001", "--what", "x", "--kind", "magic")]
    [InlineData("repair", "nc-999999", "--what", "x")]
    [InlineData("hold", "place", "--reason", "everything")]
    [InlineData("hold", "place", "--fact", "lot", "--reason", "x")]
    [InlineData("hold", "place", "--from", "2026-11-03T06:00", "--reason", "local time")]
    [InlineData("hold", "place", "--from", "yesterday", "--reason", "x")]
    [InlineData("hold", "lift", "../x", "--reason", "x")]
    [InlineData("vin", "correct", Vin, Vin, "--reason", "x")]
    [InlineData("vin", "correct", "../../etc", Vin, "--reason", "x")]
    [InlineData("vin", "correct", Right, Vin, "--reason", "nothing is recorded under it")]
    public void What_is_mistyped_ends_with_2_and_changes_nothing(params string[] args)
    {
        AddCrew();
        var before = Eol.Run("verify", "--json", "--data", _eol.Data).Output;

        As(2, "error", args[0] is "release" or "hold" or "vin" ? "quinn" : "edda", args);

        Assert.Equal(before, Eol.Run("verify", "--json", "--data", _eol.Data).Output);
    }

    public void Dispose()
    {
        _eol.Dispose();
        _rehearsals.Dispose();
    }

    /// <summary>The station kinds of the demo's route beside the start-up.</summary>
    private static IEnumerable<string> Kinds() => File.ReadLines(Path.Combine(Repository.Root, "sequences", "demo", "plant.yaml"))
        .SkipWhile(line => !line.StartsWith("route:", StringComparison.Ordinal)).Skip(1).TakeWhile(line => line.StartsWith("  - ", StringComparison.Ordinal))
        .Select(line => line[4..].Split(' ', '#')[0]).Where(kind => kind is not ("startup" or "{")); // the demo vehicle is none of those with a condition

    private void AddCrew()
    {
        foreach (var (badge, role) in ((string, string)[])[("rita", "repairer"), ("edda", "engineer"), ("quinn", "quality")])
        {
            With(0, badge, new() { ["EOL_ADMINISTRATOR"] = $"adm:{Secret}", ["EOL_SECRET"] = Secret, ["EOL_NEW_SECRET"] = Secret }, "person", "add", badge, "--name", badge, "--role", role, "--by", "adm");
        }
    }

    private void As(int code, string text, string badge, params string[] args) => With(code, text, new() { ["EOL_SECRET"] = Secret }, [.. args, "--by", badge]);

    private void Together(int code, string text, string badge, string second) => With(
        code, text, new() { ["EOL_SECRET"] = Secret, ["EOL_SECOND_SECRET"] = Secret }, "nonconformity", "concede", "nc-000003", "--reason", "does not show", "--by", badge, "--second", second);

    private void Says(int code, string text, params string[] args) => With(code, text, [], args);

    private void With(int code, string text, Dictionary<string, string> environment, params string[] args)
    {
        var outcome = Eol.Run(environment, [.. args, "--data", _eol.Data]);
        Assert.True(outcome.Code == code, $"{string.Join(' ', args)}: {outcome}");
        Assert.Contains(text, outcome.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    private string Look(params string[] args) => Eol.Run([.. args, "--data", _eol.Data]).Output;
}
