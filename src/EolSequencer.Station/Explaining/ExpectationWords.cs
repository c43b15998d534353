using System.Globalization;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Explaining;

/// <summary>What a value must be on this vehicle, in words and with units.</summary>
internal sealed class ExpectationWords(Order order, Arguments arguments)
{
    /// <param name="indexes">The indexes that a read of a whole channel covers; empty for one value.</param>
    public string Of(Expectation expect, IReadOnlyList<string> indexes) => expect switch
    {
        Expectation.Within window => Window(window),
        Expectation.EqualTo equal => $"equals {Of(equal.Wanted)}",
        Expectation.OneOf one => $"one of {string.Join(", ", one.Wanted.Select(Of))}",
        Expectation.Only only => $"nothing but {string.Join(", ", only.Allowed)}",
        Expectation.Empty => "empty",
        Expectation.Matches matches => $"matches /{matches.Pattern}/",
        Expectation.Truth truth => truth.Wanted ? "yes" : "no",
        Expectation.ByIndex windows => ByIndex(windows, indexes),
        _ => throw new InvalidOperationException($"the plan left {expect.GetType().Name} unresolved"),
    };

    /// <summary>A value as far as it is known before the run, with the text it comes from.</summary>
    public string Of(Operand operand) => (operand, OrderScope.Known(operand, order, arguments)) switch
    {
        (Operand.Constant, { } value) => Text(value),
        (Operand.Computed computed, { } value) => $"{Text(value)} ({computed.Expression.Text})",
        _ => operand.ToString(),
    };

    /// <summary>A time or number in a plain form: the value when it is known, else its text.</summary>
    public string Plain(Operand operand) => OrderScope.Known(operand, order, arguments) is { } value ? Text(value) : operand.ToString();

    // The zeros behind a measured number say how it was measured; those of a time come from its conversion.
    private static string Text(Value value) =>
        value is NumberValue { Unit: { } unit } time && unit == UnitTable.Second ? string.Create(CultureInfo.InvariantCulture, $"{time.Number:0.#######} s") : value.ToString()!;

    private string Window(Expectation.Within window)
    {
        var (low, high) = (Number(window.Low, window.Unit), Number(window.High, window.Unit));
        var isKnown = (window.Low is null || low is not null) && (window.High is null || high is not null);
        if (isKnown && !(low > high)) return new Window(low, high, window.Unit).Describe();
        return (window.Low, window.High) switch
        {
            ({ } from, { } to) => $"{Plain(from)} .. {Plain(to)}",
            ({ } from, null) => $"at least {Plain(from)}",
            (_, { } to) => $"at most {Plain(to)}",
            _ => "",
        };
    }

    private decimal? Number(Operand? end, Unit? unit)
    {
        if (end is null || OrderScope.Known(end, order, arguments) is not NumberValue number) return null;
        var inUnit = number.Unit is null ? number with { Unit = unit } : number;
        return inUnit.TryIn(unit, out var converted) ? converted : null;
    }

    private string ByIndex(Expectation.ByIndex windows, IReadOnlyList<string> indexes)
    {
        var each = indexes.Select(index => (Index: index, Words: Of(windows.Windows[index], []))).ToList();
        return each.DistinctBy(one => one.Words).Count() == 1 ? each[0].Words : string.Join("; ", each.Select(one => $"{one.Index}: {one.Words}"));
    }
}
