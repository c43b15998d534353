using System.Buffers;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Tests.Samples;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Tests.Verify;

/// <summary>Replaces a run's events by others and makes every link anew, as a forger would who has all but the station's key.</summary>
internal sealed class ForgedRun(TempFolder folder, string run, Func<ImmutableArray<RunEvent>, ImmutableArray<RunEvent>> forge)
{
    public void Write()
    {
        var row = folder.Ask<long>("SELECT id FROM run WHERE run = @run", new { run })[0];
        var link = new byte[32];
        foreach (var next in forge(folder.OpenToRead().Runs.Load(run)!.Events))
        {
            var bytes = BytesOf(next);
            link = SHA256.HashData([.. link, .. bytes]);
            var step = next is Judged judged ? StepRow.Of(judged).Counted.ToString().ToLowerInvariant() : null;
            folder.Tamper("UPDATE event SET bytes = @bytes, hash = @link, counted = @step WHERE id = @id", new { bytes, link, step, id = EventKey.Of(row, next.N) });
        }
    }

    private static byte[] BytesOf(RunEvent next)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using var json = new Utf8JsonWriter(buffer, EventForm.JsonOptions);
        EventForm.Write(json, next, next is SeriesRecorded series ? SeriesContent.Of(series.Points) : null);
        json.Flush();
        return buffer.WrittenSpan.ToArray();
    }
}
