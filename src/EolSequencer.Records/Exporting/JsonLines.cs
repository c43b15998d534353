using System.Text.Encodings.Web;
using System.Text.Json;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Exporting;

/// <summary>Writes a JSON object on each line.</summary>
internal sealed class JsonLines(Stream to) : IExportLines
{
    private static readonly JsonEncodedText CriteriaField = JsonEncodedText.Encode("criteria");

    private readonly Utf8JsonWriter _json = new(to, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });

    public long Count { get; private set; }

    public void Begin(ExportSubject subject) { }

    public void Add(RunSummary run)
    {
        _json.WriteStartObject();
        foreach (var column in ExportColumns.Runs) column.Write(_json, run);
        End();
    }

    public void Add(StepResult step)
    {
        _json.WriteStartObject();
        foreach (var column in ExportColumns.Steps) column.Write(_json, step);
        _json.WriteStartArray(CriteriaField);
        foreach (var one in step.Judged.Criteria)
        {
            _json.WriteStartObject();
            foreach (var column in ExportColumns.Criteria) column.Write(_json, one);
            _json.WriteEndObject();
        }

        _json.WriteEndArray();
        End();
    }

    public void Dispose() => _json.Dispose();

    private void End()
    {
        _json.WriteEndObject();
        _json.Flush();
        _json.Reset();
        to.WriteByte((byte)'\n');
        Count++;
    }
}
