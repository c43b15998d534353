using System.Text.Json;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// <see cref="SeriesRecorded"/>: <c>series</c> step, <c>c</c> channel, <c>z</c> number of points, <c>l</c> length and <c>h</c>
/// SHA-256 of their content (<see cref="SeriesContent"/>), which is kept beside the events; of a capture <c>f</c> when it began,
/// <c>k</c> how long it lasted, <c>d</c> why continuity was lost.
/// </summary>
internal static class SeriesForm
{
    public static ReadOnlySpan<byte> Kind => "series"u8;

    public static void Write(Utf8JsonWriter json, SeriesRecorded series, SeriesContent content)
    {
        json.WriteString(Kind, series.Step);
        json.WriteString("c"u8, series.Channel);
        json.WriteNumber("z"u8, content.Reference.Points);
        json.WriteNumber("l"u8, content.Reference.Length);
        json.WriteString("h"u8, content.Reference.Hash);
        if (series.Capture is not { } capture) return;
        json.WriteNumber("f"u8, capture.From);
        json.WriteNumber("k"u8, capture.Length);
        json.WriteOptional("d"u8, capture.Lost);
    }

    public static SeriesRecorded Read(Fields fields, int n, long at, IAttachments attachments) => new()
    {
        N = n,
        At = at,
        Step = fields.Text(Kind),
        Channel = fields.Text("c"u8),
        Points = attachments.Series(n, new SeriesReference(fields.Int("z"u8), fields.Int("l"u8), fields.Text("h"u8))),
        Capture = fields.Optional("f"u8) is null ? null : new CaptureSpan(fields.Long("f"u8), fields.Long("k"u8), fields.TextOrNull("d"u8)),
    };
}
