using EolSequencer.Cli.Commands;
using EolSequencer.Cli.Output;
using EolSequencer.Cli.Replaying;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records;
using EolSequencer.Records.Exporting;
using Spectre.Console;

namespace EolSequencer.Cli.Exporting;

/// <summary>Exports to a file, or to standard output with what people are told on standard error.</summary>
internal sealed class ExportSession(IAnsiConsole console, ExportChoices choices)
{
    private readonly IAnsiConsole _told = choices.File is null ? ErrorConsole.Make() : console;

    public int Run()
    {
        if (Filter(out var fault) is not { } filter) return Refusals.Document(_told, fault!);
        var opened = RecordFolder.Open(choices.Data);
        if (opened is not FolderResult<RecordFolder>.Opened { Folder: var record }) return Refusals.Folder(_told, opened);
        try
        {
            return choices.File is { } file ? ToFile(record, filter, file) : ToStandardOutput(record, filter);
        }
        catch (RecordFault trouble)
        {
            return Refusals.Equipment(_told, trouble.Message);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return Refusals.Equipment(_told, $"{choices.File ?? "standard output"} cannot be written: {trouble.Message}");
        }
    }

    private int ToFile(RecordFolder record, ExportFilter filter, string path)
    {
        if (NewFile.Open(path, choices.Replace, out var refused) is not { } file) return Refusals.Document(_told, refused!);
        using (file)
        {
            var count = record.Exports.Write(file.Content, choices.Subject, choices.Form, filter);
            if (file.Keep() is { } taken) return Refusals.Document(_told, taken);
            return Tell(count, $"written to {path}");
        }
    }

    private int ToStandardOutput(RecordFolder record, ExportFilter filter)
    {
        using var output = new BufferedStream(Console.OpenStandardOutput(), 1 << 16);
        var count = record.Exports.Write(output, choices.Subject, choices.Form, filter);
        output.Flush();
        return Tell(count, "written");
    }

    private int Tell(ExportCount count, string done)
    {
        var what = choices.Mode switch { RunMode.Rehearsal => "rehearsal", RunMode.Check => "check of a station", _ => "production run" };
        _told.WriteLine($"{Words.Count(count.Lines, "line")} of {Words.Count(count.Runs, what)} {done}");
        return ExitCode.Pass;
    }

    private ExportFilter? Filter(out string? fault)
    {
        var (from, to) = (choices.From is null ? null : DayRange.Day(choices.From), choices.To is null ? null : DayRange.Day(choices.To));
        fault = null;
        if (choices.From is not null && from is null) fault = $"'{choices.From}' is no day; write it as 2026-11-25";
        else if (choices.To is not null && to is null) fault = $"'{choices.To}' is no day; write it as 2026-11-25";
        else if (to < from) fault = $"the days end at {choices.To}, before they begin at {choices.From}";
        else if (choices.Vin is not null && Vin.TryParse(choices.Vin, CheckDigitRule.Off) is { Vin: null, Fault: var why }) fault = $"'{choices.Vin}' is no vehicle identification number: {why}";
        else if (choices.Replace && choices.File is null) fault = "--replace is about the file of --out, which is missing";
        if (fault is not null) return null;
        return new ExportFilter
        {
            Mode = choices.Mode,
            Vin = choices.Vin,
            Station = choices.Station,
            From = from,
            To = to,
        };
    }
}
