using System.Collections.Immutable;
using System.CommandLine;
using EolSequencer.Cli.Administering;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Records;
using EolSequencer.Records.Release;
using EolSequencer.Station.Releasing;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol release</c>: signs that a vehicle may leave, or says what speaks against it.</summary>
internal static class ReleaseCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var vin = ActTexts.Vin();
        var check = new Option<bool>("--check") { Description = "Only says what speaks against it; nobody signs." };
        var options = new ActOptions();
        var command = new Command("release", "Signs that a vehicle may leave: its route is complete and nothing is open.") { vin, check };
        options.AddTo(command);
        command.SetAction(parsed =>
        {
            var session = new ActSession(console, options.Of(parsed));
            var text = parsed.GetRequiredValue(vin);
            if (parsed.GetValue(check)) return session.Look(record => Check(console, record.Releases.Of(text, RouteOf(record, text)), parsed.GetValue(options.Json)));
            return session.Run(
                (administration, by) => RecordFolder.Open(parsed.GetRequiredValue(options.Data)) is FolderResult<RecordFolder>.Opened { Folder: var record }
                    ? administration.Releases.Sign(by, text, RouteOf(record, text))
                    : throw new RecordFault($"{parsed.GetRequiredValue(options.Data)} cannot be read any more"),
                ready => ($"{ready.Vin} is released: {string.Join(", ", ready.Runs)}", ready));
        });
        return command;
    }

    private static ImmutableArray<string> RouteOf(RecordFolder record, string vin) => new Route(record, ExpressionsFolder.Open()).Of(vin);

    private static int Check(IAnsiConsole console, Readiness ready, bool asJson)
    {
        if (asJson) JsonOutput.Write(console, ready);
        else if (ready.IsReady) console.MarkupLineInterpolated($"{ready.Vin}: nothing speaks against its release{(ready.State is { } state ? $" ({state})" : "")}");
        else foreach (var line in ready.Against) console.MarkupLineInterpolated($"✗ {line}");
        return ready.IsReady ? ExitCode.Pass : ExitCode.Fail;
    }
}
