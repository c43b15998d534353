using System.Globalization;
using System.Text.Json;
using EolSequencer.Model.Events;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// <see cref="RunBegun"/>: <c>run-begun</c> id of the run, then its fields by their own names. <c>sources</c> are
/// [path, hash] with the texts kept beside, <c>instruments</c> [role, instrument, calibration due], <c>na</c> the steps
/// that do not apply.
/// </summary>
internal static class RunBegunForm
{
    private const string DayForm = "yyyy-MM-dd";

    public static ReadOnlySpan<byte> Kind => "run-begun"u8;

    public static void Write(Utf8JsonWriter json, RunBegun begun)
    {
        json.WriteString(Kind, begun.Run);
        json.WriteString("plant"u8, begun.Plant);
        json.WriteString("station"u8, begun.Station);
        json.WriteString("kind"u8, begun.StationKind);
        json.WriteString("sequence"u8, begun.Sequence);
        json.WriteNumber("revision"u8, begun.Revision);
        OrderForm.Write(json, begun.Order);
        WriteSources(json, begun);
        json.WriteString("compiled"u8, begun.Compiled);
        json.WriteString("program"u8, begun.Program);
        json.WriteOptional("by"u8, begun.Person);
        json.WriteString("mode"u8, begun.Mode.Word());
        json.WriteOptional("seed"u8, begun.Seed?.ToString(CultureInfo.InvariantCulture));
        json.WriteTexts("injected"u8, begun.Injected);
        json.WriteString("zone"u8, begun.Zone);
        json.WriteString("wall"u8, UtcText.Of(begun.Wall));
        WriteInstruments(json, begun);
        json.WriteTexts("unfit"u8, begun.Unfit);
        json.WriteTexts("only"u8, begun.OnlySteps);
        json.WriteOptional("retest"u8, begun.RetestOf);
        json.WriteTexts("na"u8, begun.NotApplicable);
        json.WriteNumber("planned"u8, begun.Planned);
    }

    public static RunBegun Read(Fields fields, int n, long at, IAttachments attachments) => new()
    {
        N = n,
        At = at,
        Run = fields.Text(Kind),
        Plant = fields.Text("plant"u8),
        Station = fields.Text("station"u8),
        StationKind = fields.Text("kind"u8),
        Sequence = fields.Text("sequence"u8),
        Revision = fields.Int("revision"u8),
        Order = OrderForm.Read(fields.Object("order"u8)),
        Sources = fields.List("sources"u8, item => ReadSource(item, attachments)),
        Compiled = fields.Text("compiled"u8),
        Program = fields.Text("program"u8),
        Person = fields.TextOrNull("by"u8),
        Mode = ModeOf(fields.Text("mode"u8)),
        Seed = fields.TextOrNull("seed"u8) is { } seed ? ulong.Parse(seed, NumberStyles.None, CultureInfo.InvariantCulture) : null,
        Injected = fields.Texts("injected"u8),
        Zone = fields.Text("zone"u8),
        Wall = UtcText.Read(fields.Text("wall"u8)),
        Instruments = fields.List("instruments"u8, ReadInstrument),
        Unfit = fields.Texts("unfit"u8),
        OnlySteps = fields.Texts("only"u8),
        RetestOf = fields.TextOrNull("retest"u8),
        NotApplicable = fields.Texts("na"u8),
        Planned = fields.Int("planned"u8),
    };

    /// <summary>The mode of a word in events and read tables; a <see cref="FormatException"/> when it is none.</summary>
    public static RunMode ModeOf(string word) => RunModes.TryParse(word, out var mode) ? mode : throw new FormatException($"'{word}' is no mode of a run");

    private static void WriteSources(Utf8JsonWriter json, RunBegun begun)
    {
        if (begun.Sources.IsDefaultOrEmpty) return;
        json.WriteStartArray("sources"u8);
        foreach (var source in begun.Sources)
        {
            json.WriteStartArray();
            json.WriteStringValue(source.Path);
            json.WriteStringValue(source.Hash);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static SourceCopy ReadSource(JsonElement item, IAttachments attachments)
    {
        var hash = Fields.TextOf(item[1]);
        return new SourceCopy(Fields.TextOf(item[0]), hash, attachments.SourceText(hash));
    }

    private static void WriteInstruments(Utf8JsonWriter json, RunBegun begun)
    {
        if (begun.Instruments.IsDefaultOrEmpty) return;
        json.WriteStartArray("instruments"u8);
        foreach (var instrument in begun.Instruments)
        {
            json.WriteStartArray();
            json.WriteStringValue(instrument.Role);
            json.WriteStringValue(instrument.Instrument);
            if (instrument.CalibrationDue is { } due) json.WriteStringValue(due.ToString(DayForm, CultureInfo.InvariantCulture));
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static InstrumentInUse ReadInstrument(JsonElement item) => new(
        Fields.TextOf(item[0]),
        Fields.TextOf(item[1]),
        item.GetArrayLength() > 2 ? DateOnly.ParseExact(Fields.TextOf(item[2]), DayForm, CultureInfo.InvariantCulture) : null);
}
