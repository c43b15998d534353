using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;

namespace EolSequencer.Cli.Probing;

/// <summary>How a reading looks at the prompt.</summary>
internal static class ReadingText
{
    /// <summary>The value with its bytes, or why there is none.</summary>
    public static string Of(in Reading reading) => reading switch
    {
        { Missing: { } cause } => $"no value: {cause.Word()}{Said(reading)}",
        { Value: { } value } => $"{value}{Bytes(reading)}",
        _ => $"confirmed{Bytes(reading)}",
    };

    /// <summary>The value alone, or why there is none.</summary>
    public static string Short(in Reading reading) => reading is { Missing: { } cause } ? $"no value: {cause.Word()}" : reading.Value?.ToString() ?? "confirmed";

    private static string Said(in Reading reading) => reading.Detail is { } detail ? $" ({detail})" : "";

    private static string Bytes(in Reading reading) => reading.Raw.IsEmpty ? "" : $"   bytes {HexText.Of(reading.Raw.Span)}";
}
