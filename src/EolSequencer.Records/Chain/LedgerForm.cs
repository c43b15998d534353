using System.Text.Json;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Chain;

/// <summary>
/// A ledger entry as the UTF-8 bytes that are hashed: <c>n</c> its number, then <c>begun</c> run and <c>first</c> link, or
/// <c>ended</c> run, <c>last</c> link, <c>events</c> and <c>verdict</c>, or <c>act</c>, <c>wall</c>,
/// <c>by</c> whom where a person did it, and <c>about</c>, the fields of that kind of act.
/// </summary>
internal static class LedgerForm
{
    public static void Write(Utf8JsonWriter json, LedgerEntry entry)
    {
        json.WriteStartObject();
        json.WriteNumber("n"u8, entry.N);
        switch (entry)
        {
            case LedgerEntry.RunBegun begun:
                json.WriteString("begun"u8, begun.Run);
                json.WriteString("first"u8, begun.First);
                break;
            case LedgerEntry.RunEnded ended:
                json.WriteString("ended"u8, ended.Run);
                json.WriteString("last"u8, ended.Last);
                json.WriteNumber("events"u8, ended.Events);
                json.WriteString("verdict"u8, ended.Verdict.Word());
                break;
            case LedgerEntry.Act act:
                json.WriteString("act"u8, ActKinds.WordOf(act.What));
                json.WriteString("wall"u8, UtcText.Of(act.Wall));
                json.WriteOptional("by"u8, act.By);
                json.WritePropertyName("about"u8);
                ActKinds.Write(json, act.What);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(entry), entry, "there are three kinds of ledger entry");
        }

        json.WriteEndObject();
    }

    /// <summary>The entry that these bytes are; a <see cref="FormatException"/> says why they are none.</summary>
    public static LedgerEntry Read(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            using var document = JsonDocument.Parse(bytes);
            return Read(new Fields(document.RootElement));
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException)
        {
            throw new FormatException(fault.Message, fault);
        }
    }

    private static LedgerEntry Read(Fields fields)
    {
        var n = fields.Long("n"u8);
        if (fields.TextOrNull("begun"u8) is { } begun) return new LedgerEntry.RunBegun(n, begun, fields.Text("first"u8));
        if (fields.TextOrNull("ended"u8) is { } ended)
        {
            return new LedgerEntry.RunEnded(n, ended, fields.Text("last"u8), fields.Int("events"u8), fields.Verdict("verdict"u8));
        }

        var what = ActKinds.Read(fields.Text("act"u8), fields.Required("about"u8));
        return new LedgerEntry.Act(n, UtcText.Read(fields.Text("wall"u8)), fields.TextOrNull("by"u8), what);
    }
}
