using System.Text;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Exporting;

/// <summary>Writes a table after RFC 4180.</summary>
internal sealed class CsvLines(Stream to) : IExportLines
{
    private readonly StreamWriter _text = new(to, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true) { NewLine = "\r\n" };
    private bool _isInLine;

    public long Count { get; private set; }

    public void Begin(ExportSubject subject)
    {
        var names = subject == ExportSubject.Runs
            ? ExportColumns.Runs.Select(column => column.Name)
            : ExportColumns.Steps.Select(column => column.Name).Concat(ExportColumns.Criteria.Select(column => column.Name));
        foreach (var name in names) Value(name);
        EndLine();
    }

    public void Add(RunSummary run)
    {
        Values(ExportColumns.Runs, run);
        End();
    }

    public void Add(StepResult step)
    {
        foreach (var one in step.Judged.Criteria.DefaultIfEmpty())
        {
            Values(ExportColumns.Steps, step);
            if (one is null) foreach (var _ in ExportColumns.Criteria) Value("");
            else Values(ExportColumns.Criteria, one);
            End();
        }
    }

    public void Dispose() => _text.Dispose();

    private void Values<T>(IEnumerable<ExportColumn<T>> columns, T line)
    {
        foreach (var column in columns) Value(CsvText.Of(column.Of(line)));
    }

    private void Value(string text)
    {
        if (_isInLine) _text.Write(',');
        _text.Write(text);
        _isInLine = true;
    }

    private void End()
    {
        EndLine();
        Count++;
    }

    private void EndLine()
    {
        _text.WriteLine();
        _isInLine = false;
    }
}
