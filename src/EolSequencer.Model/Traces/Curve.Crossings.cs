using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Traces;

/// <content>When, how often and how regularly a level is passed.</content>
public sealed partial record Curve
{
    /// <summary>The first moment at which it reaches <paramref name="to"/> from below, after it was at <paramref name="from"/> or below.</summary>
    /// <param name="from">At most <paramref name="to"/>; when equal, it has to be below first. The distance keeps noise from counting.</param>
    /// <exception cref="ExpressionFault">It never does.</exception>
    public long Rises(decimal from, decimal to) => Rising(from, to, 1) is [var first, ..] ? first : throw NoPassing("rises", from, to);

    /// <summary>The first moment at which it reaches <paramref name="to"/> from above, after it was at <paramref name="from"/> or above.</summary>
    /// <param name="from">At least <paramref name="to"/>; when equal, it has to be above first.</param>
    /// <exception cref="ExpressionFault">It never does.</exception>
    public long Falls(decimal from, decimal to) => Falling(from, to, 1) is [var first, ..] ? first : throw NoPassing("falls", from, to);

    /// <summary>How often it rises from one level to another; 0 is an answer.</summary>
    public int CountRises(decimal from, decimal to) => Rising(from, to, int.MaxValue).Count;

    /// <summary>How often it falls from one level to another; 0 is an answer.</summary>
    public int CountFalls(decimal from, decimal to) => Falling(from, to, int.MaxValue).Count;

    /// <summary>Whole cycles a minute, from the first rise to the last; to 12 significant digits.</summary>
    /// <exception cref="ExpressionFault">It rises less than twice.</exception>
    public decimal Rate(decimal from, decimal to) => Cycles.Rate(Rising(from, to, int.MaxValue), Name);

    private List<long> Rising(decimal from, decimal to, int most)
    {
        if (from > to) throw new ExpressionFault($"{Name} cannot rise from {NumberText.Of(from)} to {NumberText.Of(to)}, which is lower");
        return Passings(from, to, 1, most);
    }

    private List<long> Falling(decimal from, decimal to, int most)
    {
        if (from < to) throw new ExpressionFault($"{Name} cannot fall from {NumberText.Of(from)} to {NumberText.Of(to)}, which is higher");
        return Passings(from, to, -1, most);
    }

    private List<long> Passings(decimal from, decimal to, int direction, int most)
    {
        RequireWhole();
        var found = new List<long>();
        var wasBelow = false;
        for (var at = 0; at < Points.Length && found.Count < most; at++)
        {
            var number = Points[at].Number;
            if (wasBelow && (number - to) * direction >= 0)
            {
                found.Add(Passing(Points[at - 1], Points[at], to));
                wasBelow = false;
            }

            if (from == to ? (number - from) * direction < 0 : (number - from) * direction <= 0) wasBelow = true;
        }

        return found;
    }

    private ExpressionFault NoPassing(string word, decimal from, decimal to) => new(
        from == to ? $"{Name} never {word} through {NumberText.Of(to)}" : $"{Name} never {word} from {NumberText.Of(from)} to {NumberText.Of(to)}");
}
