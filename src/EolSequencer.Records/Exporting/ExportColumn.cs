using System.Text.Json;

namespace EolSequencer.Records.Exporting;

/// <summary>A column of a table, a field of a JSON object.</summary>
internal sealed class ExportColumn<T>(string name, Func<T, ExportValue> value)
{
    private readonly JsonEncodedText _field = JsonEncodedText.Encode(name);

    public string Name => name;

    public ExportValue Of(T line) => value(line);

    /// <summary>Writes the field; none when there is no value.</summary>
    public void Write(Utf8JsonWriter json, T line)
    {
        var found = value(line);
        switch (found.Kind)
        {
            case ExportKind.Absent:
                break;
            case ExportKind.Text or ExportKind.Decimal:
                json.WriteString(_field, found.Text);
                break;
            default:
                json.WritePropertyName(_field);
                json.WriteRawValue(found.Text!);
                break;
        }
    }
}
