using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using EolSequencer.Model.Events;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Benchmarks.WhatIf;

/// <summary>A vehicle of the invented history: a number of its own in place of that of the vehicle it was made from.</summary>
internal sealed class HistoryVehicle
{
    private const int CheckPosition = 8;

    private readonly string _old;
    private readonly string _oldHex;
    private readonly string _newHex;

    public HistoryVehicle(Order source, int serial)
    {
        _old = source.Vin.Text;
        var text = _old[..11] + serial.ToString("000000", CultureInfo.InvariantCulture);
        text = text[..CheckPosition] + Vin.ComputeCheckDigit(text) + text[(CheckPosition + 1)..];
        Order = source with { Id = $"FV-{serial:000000}", Vin = Vin.TryParse(text, CheckDigitRule.Require).Vin! };
        _oldHex = Convert.ToHexString(Encoding.ASCII.GetBytes(_old));
        _newHex = Convert.ToHexString(Encoding.ASCII.GetBytes(text));
    }

    public Order Order { get; }

    /// <summary>A text of the recorded run as it is for this vehicle.</summary>
    public string? Of(string? text) => text?.Replace(_old, Order.Vin.Text, StringComparison.Ordinal);

    public Judged Of(Judged judged) => judged with
    {
        Detail = Of(judged.Detail),
        Criteria = [.. judged.Criteria.Select(one => one.IsText ? one with { Value = Of(one.Value), Expected = Of(one.Expected) } : one)],
        Readings = [.. judged.Readings.Select(reading => reading with { Raw = reading.Raw?.Replace(_oldHex, _newHex, StringComparison.Ordinal) })],
    };
}
