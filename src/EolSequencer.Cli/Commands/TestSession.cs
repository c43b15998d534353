using System.Collections.Immutable;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.ExpectedResults;
using EolSequencer.Model.Judging;
using EolSequencer.Records;
using EolSequencer.Rehearsal.ExpectedResults;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary>Loads tests, rehearses them, and says what came of each.</summary>
internal sealed class TestSession(IAnsiConsole console, TestChoices choices)
{
    private readonly IAnsiConsole _told = choices.AsJson ? ErrorConsole.Make() : console;

    public int Run()
    {
        var load = ExpectedLoader.Load(choices.Paths, ExpressionsFolder.Open(), new RehearsalKnowledge());
        DiagnosticLines.Write(_told, load.Diagnostics);
        if (load.Diagnostics.Any(one => one.Severity == Severity.Error)) return ExitCode.Document;
        if (Chosen(load.Files) is not { } files) return ExitCode.Document;

        using var temporary = choices.Data is null ? new TemporaryFolder() : null;
        var opened = DataFolder.Open(choices.Data ?? temporary!.Path, TimeProvider.System);
        if (opened is not FolderResult<DataFolder>.Opened { Folder: var folder }) return Refusals.Folder(_told, opened);
        using var stopping = new StopSignals(_told);
        var outcomes = new ExpectedRunner(folder).Run([.. files.SelectMany(file => file.Runs)], stopping.Token);
        return Tell(files, outcomes);
    }

    private List<ExpectedFile>? Chosen(IReadOnlyList<ExpectedFile> files)
    {
        if (files.Count == 0)
        {
            Refusals.Document(_told, $"there is no file of expected results in {string.Join(", ", choices.Paths)}");
            return null;
        }

        if (choices.Names.Count == 0) return [.. files];
        var names = files.SelectMany(file => file.Runs).Select(test => test.Name).ToList();
        if (choices.Names.FirstOrDefault(name => !names.Contains(name)) is { } unknown)
        {
            var near = Nearest.Of(unknown, names);
            Refusals.Document(_told, $"there is no test '{unknown}'{(near is null ? "" : $"; did you mean '{near}'?")}");
            return null;
        }

        return [.. files.Select(file => file with { Runs = [.. file.Runs.Where(test => choices.Names.Contains(test.Name))] }).Where(file => !file.Runs.IsEmpty)];
    }

    private int Tell(IReadOnlyList<ExpectedFile> files, ImmutableArray<ExpectedOutcome> outcomes)
    {
        var results = new List<TestedFile>();
        foreach (var file in files)
        {
            var before = results.Sum(result => result.Outcomes.Length);
            results.Add(new TestedFile(file, outcomes.Slice(before, file.Runs.Length)));
        }

        if (choices.AsJson) JsonOutput.Write(console, TestJson.Of(results));
        else TestLines.Write(console, results);
        if (choices.JUnit is { } path && JUnitFile.Write(path, results) is { } trouble) return Refusals.Document(_told, trouble);
        return outcomes.Any(outcome => outcome.Trouble is not null) ? ExitCode.Error
            : outcomes.All(outcome => outcome.HasPassed) ? ExitCode.Pass
            : ExitCode.Fail;
    }
}
