using System.Text.Encodings.Web;
using System.Text.Json;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// An event as the UTF-8 bytes that are hashed and kept: one JSON object without blanks, <c>n</c> its number, <c>t</c>
/// microseconds since the run began, then a key that says what happened. Every number is whole; measured numbers are
/// decimal text; what is at its usual value is left out; the order of the fields is fixed.
/// </summary>
internal static class EventForm
{
    /// <summary>For writers of this form: letters beyond ASCII stay letters, and our own code keeps the nesting right.</summary>
    public static readonly JsonWriterOptions JsonOptions = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = true };

    /// <summary>Writes an event.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="next">The event.</param>
    /// <param name="series">The content of a <see cref="SeriesRecorded"/>; null for every other event.</param>
    public static void Write(Utf8JsonWriter json, RunEvent next, SeriesContent? series)
    {
        json.WriteStartObject();
        json.WriteNumber("n"u8, next.N);
        json.WriteNumber("t"u8, next.At);
        switch (next)
        {
            case Judged judged: JudgedForm.Write(json, judged); break;
            case Asked asked: AskedForm.Write(json, asked); break;
            case Answered answered: AnsweredForm.Write(json, answered); break;
            case AnswerRefused refused: AnswerRefusedForm.Write(json, refused); break;
            case Begun begun: BegunForm.Write(json, begun); break;
            case NotNeeded notNeeded: NotNeededForm.Write(json, notNeeded); break;
            case PassedOver passedOver: PassedOverForm.Write(json, passedOver); break;
            case SeriesRecorded recorded: SeriesForm.Write(json, recorded, series ?? throw new ArgumentNullException(nameof(series))); break;
            case DeviceLost lost: DeviceLostForm.Write(json, lost); break;
            case DeviceBack back: DeviceBackForm.Write(json, back); break;
            case Stopped stopped: StoppedForm.Write(json, stopped); break;
            case ConditionsRead read: ConditionsForm.Write(json, read); break;
            case ClockSet set: ClockSetForm.Write(json, set); break;
            case Resumed resumed: ResumedForm.Write(json, resumed); break;
            case RunBegun runBegun: RunBegunForm.Write(json, runBegun); break;
            case RunEnded runEnded: RunEndedForm.Write(json, runEnded); break;
            default: throw new ArgumentOutOfRangeException(nameof(next), next, "this kind of event has no canonical form");
        }

        json.WriteEndObject();
    }

    /// <summary>The event that these bytes are; a <see cref="FormatException"/> says why they are none.</summary>
    public static RunEvent Read(ReadOnlyMemory<byte> bytes, IAttachments attachments)
    {
        try
        {
            using var document = JsonDocument.Parse(bytes);
            return Read(document.RootElement, attachments);
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or ArgumentException or OverflowException or IndexOutOfRangeException)
        {
            throw new FormatException(fault.Message, fault);
        }
    }

    /// <summary>Whether bytes only say what was asked of a person or begun; seen without reading them.</summary>
    public static bool IsNoFinding(ReadOnlySpan<byte> bytes)
    {
        // Number and time come first and are numbers, so the third name is the first behind the second comma.
        var rest = bytes[(bytes.IndexOf((byte)',') + 1)..];
        rest = rest[(rest.IndexOf((byte)',') + 1)..];
        return rest.StartsWith("\"asked\":"u8) || rest.StartsWith("\"begun\":"u8);
    }

    private static RunEvent Read(JsonElement root, IAttachments attachments)
    {
        var fields = new Fields(root);
        var n = fields.Int("n"u8);
        var at = fields.Long("t"u8);
        var kind = ThirdOf(root.EnumerateObject());
        if (kind.NameEquals(JudgedForm.Kind)) return JudgedForm.Read(fields, n, at, attachments.WantBytes);
        if (kind.NameEquals(AskedForm.Kind)) return AskedForm.Read(fields, n, at);
        if (kind.NameEquals(AnsweredForm.Kind)) return AnsweredForm.Read(fields, n, at);
        if (kind.NameEquals(AnswerRefusedForm.Kind)) return AnswerRefusedForm.Read(fields, n, at);
        if (kind.NameEquals(BegunForm.Kind)) return BegunForm.Read(fields, n, at);
        if (kind.NameEquals(NotNeededForm.Kind)) return NotNeededForm.Read(fields, n, at);
        if (kind.NameEquals(PassedOverForm.Kind)) return PassedOverForm.Read(fields, n, at);
        if (kind.NameEquals(SeriesForm.Kind)) return SeriesForm.Read(fields, n, at, attachments);
        if (kind.NameEquals(DeviceLostForm.Kind)) return DeviceLostForm.Read(fields, n, at);
        if (kind.NameEquals(DeviceBackForm.Kind)) return DeviceBackForm.Read(fields, n, at);
        if (kind.NameEquals(StoppedForm.Kind)) return StoppedForm.Read(fields, n, at);
        if (kind.NameEquals(ConditionsForm.Kind)) return ConditionsForm.Read(fields, n, at);
        if (kind.NameEquals(ClockSetForm.Kind)) return ClockSetForm.Read(fields, n, at);
        if (kind.NameEquals(ResumedForm.Kind)) return ResumedForm.Read(fields, n, at);
        if (kind.NameEquals(RunBegunForm.Kind)) return RunBegunForm.Read(fields, n, at, attachments);
        if (kind.NameEquals(RunEndedForm.Kind)) return RunEndedForm.Read(fields, n, at);
        throw new FormatException($"'{kind.Name}' is no kind of event");
    }

    private static JsonProperty ThirdOf(JsonElement.ObjectEnumerator fields) =>
        fields.MoveNext() && fields.MoveNext() && fields.MoveNext() ? fields.Current : throw new FormatException("the event does not say what happened");
}
