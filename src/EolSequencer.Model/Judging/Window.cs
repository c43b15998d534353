using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Judging;

/// <summary>A closed interval of accepted numbers, open to at most one side; never empty, never inverted.</summary>
public sealed record Window
{
    /// <summary>A window of known good ends; an inverted one or one without ends is a broken assumption and throws.</summary>
    public Window(decimal? low, decimal? high, Unit? unit)
    {
        if (low is null && high is null) throw new ArgumentException("a window has one end at least");
        if (low > high) throw new ArgumentException($"the window ends at {NumberText.Of(high.Value)}, below its start at {NumberText.Of(low.Value)}");
        (Low, High, Unit) = (low, high, unit);
    }

    /// <summary>The smallest accepted number; null when nothing is too small.</summary>
    public decimal? Low { get; }

    /// <summary>The largest accepted number; null when nothing is too large.</summary>
    public decimal? High { get; }

    /// <summary>The unit of both ends; null for counts.</summary>
    public Unit? Unit { get; }

    /// <summary>Whether a number in <see cref="Unit"/> is accepted; the ends are.</summary>
    public bool Contains(decimal number) => !(number < Low) && !(number > High);

    /// <summary>The simple decision: the window alone.</summary>
    public Verdict Judge(decimal number) => Contains(number) ? Verdict.Pass : Verdict.Fail;

    /// <summary>For people and records: <c>1.60 .. 2.40 A</c>, <c>at least 9.6 V</c>, <c>at most 3</c>.</summary>
    public string Describe()
    {
        var unit = Unit is null ? "" : $" {Unit.Symbol}";
        return (Low, High) switch
        {
            ({ } low, { } high) => $"{NumberText.Of(low)} .. {NumberText.Of(high)}{unit}",
            ({ } low, null) => $"at least {NumberText.Of(low)}{unit}",
            (_, { } high) => $"at most {NumberText.Of(high)}{unit}",
            _ => throw new InvalidOperationException("a window has one end at least"),
        };
    }

    public override string ToString() => Describe();
}
