using System.Collections.Immutable;
using System.Text.Json;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Records.Canonical;

/// <summary>An order: <c>id</c>, <c>vin</c>, <c>type</c>, <c>options</c> and <c>facts</c>, each a value (<see cref="ValueForm"/>) by name.</summary>
internal static class OrderForm
{
    public static void Write(Utf8JsonWriter json, Order order)
    {
        json.WriteStartObject("order"u8);
        json.WriteString("id"u8, order.Id);
        json.WriteString("vin"u8, order.Vin.Text);
        json.WriteString("type"u8, order.VehicleType);
        WriteValues(json, "options"u8, order.Options);
        WriteValues(json, "facts"u8, order.Facts);
        json.WriteEndObject();
    }

    public static Order Read(Fields fields) => new(
        fields.Text("id"u8),
        ReadVin(fields.Text("vin"u8)),
        fields.Text("type"u8),
        ReadValues(fields.Optional("options"u8)),
        ReadValues(fields.Optional("facts"u8)));

    private static void WriteValues(Utf8JsonWriter json, ReadOnlySpan<byte> key, ImmutableSortedDictionary<string, Value> values)
    {
        if (values.IsEmpty) return;
        json.WriteStartObject(key);

        // By code point, not in the dictionary's own order: that follows the culture unless its maker chose otherwise.
        foreach (var (name, value) in values.OrderBy(entry => entry.Key, StringComparer.Ordinal))
        {
            json.WritePropertyName(name);
            ValueForm.Write(json, value);
        }

        json.WriteEndObject();
    }

    private static ImmutableSortedDictionary<string, Value> ReadValues(JsonElement? fields)
    {
        var values = ImmutableSortedDictionary.CreateBuilder<string, Value>(StringComparer.Ordinal);
        if (fields is null) return values.ToImmutable();
        foreach (var field in fields.Value.EnumerateObject()) values.Add(field.Name, ValueForm.Read(field.Value));
        return values.ToImmutable();
    }

    // The check digit was judged by the vehicle type's rule when the run began; here the number is history.
    private static Vin ReadVin(string text) =>
        Vin.TryParse(text, CheckDigitRule.Off) is { Vin: { } vin } ? vin : throw new FormatException($"'{text}' is no vehicle identification number");
}
