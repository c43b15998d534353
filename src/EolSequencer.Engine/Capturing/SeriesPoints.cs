using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Capturing;

/// <summary>A reading as a series keeps it.</summary>
internal static class SeriesPoints
{
    /// <param name="at">Reception, microseconds since the run began.</param>
    public static SeriesPoint Of(long at, in Reading reading) =>
        new(at, Plain(reading.Value), reading.Raw.IsEmpty ? null : Convert.ToHexString(reading.Raw.Span));

    private static string? Plain(Value? value) => value is NumberValue number ? NumberText.Of(number.Number) : value?.ToString();
}
