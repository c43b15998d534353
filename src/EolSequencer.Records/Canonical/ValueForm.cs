using System.Collections.Immutable;
using System.Text.Json;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// A value: a text as text, yes and no as <c>true</c> and <c>false</c>, a list of texts as list, a number as
/// <c>{"d": decimal text, "u": unit, "in": inexact}</c> – never as a JSON number, which readers take for binary.
/// </summary>
internal static class ValueForm
{
    public static void Write(Utf8JsonWriter json, Value value)
    {
        switch (value)
        {
            case TextValue text:
                json.WriteStringValue(text.Text);
                break;
            case TruthValue truth:
                json.WriteBooleanValue(truth.IsTrue);
                break;
            case ListValue list:
                json.WriteStartArray();
                foreach (var item in list.Items) json.WriteStringValue(item);
                json.WriteEndArray();
                break;
            case NumberValue number:
                json.WriteStartObject();
                json.WriteString("d"u8, NumberText.Of(number.Number));
                json.WriteOptional("u"u8, number.Unit?.Symbol);
                json.WriteFlag("in"u8, number.Inexact);
                json.WriteEndObject();
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(value), value, "there are four kinds of value");
        }
    }

    public static Value Read(JsonElement field) => field.ValueKind switch
    {
        JsonValueKind.String => new TextValue(Fields.TextOf(field)),
        JsonValueKind.True => TruthValue.Yes,
        JsonValueKind.False => TruthValue.No,
        JsonValueKind.Array => new ListValue([.. field.EnumerateArray().Select(Fields.TextOf)]),
        JsonValueKind.Object => ReadNumber(new Fields(field)),
        _ => throw new FormatException($"'{field}' is no value"),
    };

    private static NumberValue ReadNumber(Fields fields)
    {
        var unit = fields.TextOrNull("u"u8) is { } symbol ? UnitTable.Required(symbol) : null;
        return NumberText.TryParse(fields.Text("d"u8), out var number)
            ? new NumberValue(number, unit, fields.Flag("in"u8))
            : throw new FormatException($"'{fields.Text("d"u8)}' is no number");
    }
}
