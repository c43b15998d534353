using System.Collections.Immutable;
using System.Text.Json;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Texts;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// <see cref="Judged"/>: <c>j</c> step, <c>a</c> attempt (absent: 1), <c>k</c> time it took, <c>e</c> how long after its end it
/// was recorded (absent: 0), <c>m</c> measured verdict, <c>g</c> counted verdict (absent: as measured), <c>y</c> cause,
/// <c>d</c> detail, <c>rq</c> requirements, <c>rp</c> what to look at first, by language, <c>nc</c> code of the nonconformity, <c>pic</c> picture, <c>sn</c> part whose serial its value is, the criteria (<see cref="CriterionForm"/>) and <c>r</c> the readings
/// [channel, microseconds after the step's end, raw bytes, instrument].
/// </summary>
internal static class JudgedForm
{
    public static ReadOnlySpan<byte> Kind => "j"u8;

    public static void Write(Utf8JsonWriter json, Judged judged)
    {
        var end = judged.Start + judged.Took;
        json.WriteString(Kind, judged.Step);
        if (judged.Attempt != 1) json.WriteNumber("a"u8, judged.Attempt);
        json.WriteNumber("k"u8, judged.Took);
        if (end != judged.At) json.WriteNumber("e"u8, judged.At - end);
        json.WriteString("m"u8, judged.Measured.Word());
        if (judged.Counted != judged.Measured) json.WriteString("g"u8, judged.Counted.Word());
        if (judged.Cause is { } cause) json.WriteString("y"u8, cause.Word());
        json.WriteOptional("d"u8, judged.Detail);
        CriterionForm.WriteAll(json, judged);
        WriteForPeople(json, judged);
        WriteReadings(json, judged.Readings, end);
    }

    public static Judged Read(Fields fields, int n, long at, bool withReadings)
    {
        var took = fields.Long("k"u8);
        var end = at - fields.LongOr("e"u8, 0);
        var measured = fields.Verdict("m"u8);
        return new Judged
        {
            N = n,
            At = at,
            Step = fields.Text(Kind),
            Attempt = fields.IntOr("a"u8, 1),
            Start = end - took,
            Took = took,
            Measured = measured,
            Counted = fields.VerdictOr("g"u8, measured),
            Cause = fields.TextOrNull("y"u8) is { } word ? CauseOf(word) : null,
            Detail = fields.TextOrNull("d"u8),
            Criteria = CriterionForm.ReadAll(fields, measured),
            Requirements = fields.Texts("rq"u8),
            Repair = fields.Optional("rp"u8) is { } texts ? new LocalText([.. texts.EnumerateObject().Select(text => new LocalText.Version(text.Name, Fields.TextOf(text.Value)))]) : null,
            Nonconformity = fields.TextOrNull("nc"u8),
            Picture = fields.TextOrNull("pic"u8),
            Part = fields.TextOrNull("sn"u8),
            Readings = withReadings ? fields.List("r"u8, item => ReadReading(item, end)) : [],
        };
    }

    private static void WriteForPeople(Utf8JsonWriter json, Judged judged)
    {
        if (!judged.Requirements.IsDefaultOrEmpty)
        {
            json.WriteStartArray("rq"u8);
            foreach (var requirement in judged.Requirements) json.WriteStringValue(requirement);
            json.WriteEndArray();
        }

        if (judged.Repair is { } repair)
        {
            json.WriteStartObject("rp"u8);
            foreach (var (language, text) in repair.Versions) json.WriteString(language, text);
            json.WriteEndObject();
        }

        json.WriteOptional("nc"u8, judged.Nonconformity);
        json.WriteOptional("pic"u8, judged.Picture);
        json.WriteOptional("sn"u8, judged.Part);
    }

    private static void WriteReadings(Utf8JsonWriter json, ImmutableArray<ReadingUsed> readings, long end)
    {
        if (readings.IsDefaultOrEmpty) return;
        json.WriteStartArray("r"u8);
        foreach (var reading in readings)
        {
            json.WriteStartArray();
            json.WriteStringValue(reading.Channel);
            json.WriteNumberValue(reading.At - end);
            if (reading.Raw is not null || reading.Instrument is not null) json.WriteStringValue(reading.Raw);
            if (reading.Instrument is not null) json.WriteStringValue(reading.Instrument);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static ReadingUsed ReadReading(JsonElement item, long end)
    {
        var parts = item.GetArrayLength();
        return new ReadingUsed(
            Fields.TextOf(item[0]),
            parts > 2 ? item[2].GetString() : null,
            end + item[1].GetInt64(),
            parts > 3 ? Fields.TextOf(item[3]) : null);
    }

    private static MissingCause CauseOf(string word) =>
        MissingCauses.TryParse(word, out var cause) ? cause : throw new FormatException($"'{word}' is no cause of a missing reading");
}
