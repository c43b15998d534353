using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Exporting;

/// <summary>
/// Writes what a record holds for other programs, while stations go on writing. It exports what it reads and checks nothing:
/// <see cref="RecordFolder.Verify"/> says whether that is what was found.
/// </summary>
public sealed class RecordExporter
{
    private readonly RecordFiles _files;
    private readonly RecordOptions _options;

    internal RecordExporter(RecordFiles files, RecordOptions options) => (_files, _options) = (files, options);

    /// <summary>Writes the lines of all runs that match, oldest first; memory stays that of the greatest run.</summary>
    /// <exception cref="RecordFault">The record cannot be read.</exception>
    /// <exception cref="IOException">The stream does not take it.</exception>
    public ExportCount Write(Stream to, ExportSubject subject, ExportForm form, ExportFilter filter) => RecordFault.Guard(_files, () =>
    {
        using var source = new ExportSource(RecordConnection.ForReading(_files.Database, _options), filter);
        using IExportLines lines = form == ExportForm.Csv ? new CsvLines(to) : new JsonLines(to);
        var runs = 0L;
        lines.Begin(subject);
        foreach (var (row, run) in source.Runs())
        {
            runs++;
            if (subject == ExportSubject.Runs) lines.Add(run);
            else foreach (var step in StepResult.Of(run, source.Judged(row))) lines.Add(step);
        }

        return new ExportCount(runs, lines.Count);
    });
}
