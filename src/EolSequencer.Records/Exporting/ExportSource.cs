using Dapper;
using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Exporting;

/// <summary>
/// Reads the runs to export page by page and their events run by run, so that memory does not grow with the record. Between
/// two reads the record is let go: the write-ahead log can shrink while a long export goes on.
/// </summary>
internal sealed class ExportSource : IDisposable
{
    private const int PageLength = 200;

    private readonly RecordConnection _connection;
    private readonly Statement _events;
    private readonly Statement _first;
    private readonly ExportFilter _filter;

    public ExportSource(RecordConnection connection, ExportFilter filter)
    {
        (_connection, _filter) = (connection, filter);
        _events = connection.Prepare("SELECT bytes FROM event WHERE id BETWEEN ? AND ? AND step IS NOT NULL ORDER BY id");
        _first = connection.Prepare("SELECT bytes FROM event WHERE id = ?");
    }

    /// <summary>The runs that match and had begun when this was called, oldest first.</summary>
    public IEnumerable<(long Row, RunSummary Run)> Runs()
    {
        var end = _connection.Number("SELECT coalesce(max(id), 0) FROM run");
        var after = 0L;
        while (Page(after, end) is { Count: > 0 } page)
        {
            foreach (var row in page)
            {
                var run = row.ToSummary();
                if (IsOfTheseDays(row.Id, run)) yield return (row.Id, run);
            }

            after = page[^1].Id;
        }
    }

    /// <summary>Every judged attempt of a run, in order.</summary>
    public List<Judged> Judged(long row)
    {
        var found = new List<Judged>();
        _events.Int(1, EventKey.Before(row)).Int(2, EventKey.Last(row));
        try
        {
            while (_events.Next())
            {
                if (EventForm.Read(_events.Blob(0).ToArray(), NoAttachments.Only) is Judged judged) found.Add(judged);
            }
        }
        finally
        {
            _events.Reset();
        }

        return found;
    }

    public void Dispose() => _connection.Dispose();

    private List<RunColumns> Page(long after, long end) => _connection.Connection.Query<RunColumns>(
        $"""
        SELECT {RunColumns.All} FROM run
        WHERE id > @after AND id <= @end AND mode = @mode AND (@Vin IS NULL OR vin = @Vin) AND (@Station IS NULL OR station = @Station)
          AND (@from IS NULL OR begun_utc >= @from) AND (@until IS NULL OR begun_utc < @until)
        ORDER BY id LIMIT {PageLength}
        """,
        new
        {
            after, end, _filter.Vin, _filter.Station,
            mode = _filter.Mode.Word(),
            from = _filter.From is { } from ? UtcText.Of(ExportDays.EarliestOf(from)) : null,
            until = _filter.To is { } to ? UtcText.Of(ExportDays.LatestOf(to)) : null,
        }).AsList();

    private bool IsOfTheseDays(long row, RunSummary run)
    {
        if (_filter.From is null && _filter.To is null) return true;
        if (!_first.Int(1, EventKey.Of(row, 1)).Next()) throw new FormatException($"run {run.Run} has no first event");
        var bytes = _first.Blob(0).ToArray();
        _first.Reset();
        var day = ExportDays.DayOf(run.Begun, ((RunBegun)EventForm.Read(bytes, NoAttachments.Only)).Zone);
        return !(day < _filter.From) && !(day > _filter.To);
    }
}
