using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Reading;

/// <summary>Reads the events of a run back, with what they refer to by hash.</summary>
internal sealed class RunEvents : IAttachments
{
    private readonly long _run;
    private readonly Statement _source;
    private readonly Statement _series;

    private RunEvents(RecordConnection connection, long run)
    {
        _run = run;
        _source = connection.Prepare("SELECT bytes FROM source WHERE hash = ?");
        _series = connection.Prepare("SELECT block FROM series WHERE id = ?");
    }

    public static ImmutableArray<RunEvent> Read(RecordConnection connection, long run)
    {
        var attachments = new RunEvents(connection, run);
        var rows = connection.Prepare("SELECT bytes FROM event WHERE id BETWEEN ? AND ? ORDER BY id").Int(1, EventKey.Before(run)).Int(2, EventKey.Last(run));
        var events = ImmutableArray.CreateBuilder<RunEvent>();
        while (rows.Next()) events.Add(EventForm.Read(rows.Blob(0).ToArray(), attachments));
        return events.ToImmutable();
    }

    public string SourceText(string hash) => SourceBytes.TextOf(Required(_source.Text(1, hash), $"the file with hash {hash} is missing"));

    public ImmutableArray<SeriesPoint> Series(int n, SeriesReference reference) =>
        SeriesContent.Read(Required(_series.Int(1, EventKey.Of(_run, n)), $"the series of event {n} is missing"), reference);

    private static byte[] Required(Statement find, string otherwise)
    {
        if (!find.Next()) throw new FormatException(otherwise);
        var bytes = find.Blob(0).ToArray();
        find.Reset();
        return bytes;
    }
}
