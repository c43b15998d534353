namespace EolSequencer.Language.Binding.Reach;

/// <summary>
/// Combinations in which every two values that can occur together do so at least once.
/// </summary>
/// <remarks>
/// Greedy, one row at a time, after the one-row-at-a-time scheme for covering arrays of D. Cohen et al., The AETG system,
/// IEEE Transactions on Software Engineering 23 (1997), without its random choices, so that two loads give the same rows:
/// a row begins with the first pair that no row has yet; the other options are set in written order, each to the value that
/// meets the most new pairs with what is set already, and of equals to the one with the most new pairs left; where that is impossible the next value is tried,
/// and so on backwards. A pair that no row can hold is left out.
/// </remarks>
internal sealed class PairwiseCover
{
    /// <summary>Not set yet.</summary>
    public const int Open = -1;

    private const int MostTries = 10_000;

    private readonly int[] _sizes;
    private readonly int[] _offsets;
    private readonly bool[,] _covered;
    private readonly Func<int[], bool> _isImpossible;
    private int _tries;

    private PairwiseCover(int[] sizes, Func<int[], bool> isImpossible)
    {
        (_sizes, _isImpossible) = (sizes, isImpossible);
        _offsets = new int[sizes.Length];
        for (var at = 1; at < sizes.Length; at++) _offsets[at] = _offsets[at - 1] + sizes[at - 1];
        var all = sizes.Sum();
        _covered = new bool[all, all];
    }

    /// <summary>The rows, each with the number of a value for every option.</summary>
    /// <param name="sizes">How many values each option has.</param>
    /// <param name="isImpossible">Whether a row, some of it perhaps still <see cref="Open"/>, can surely not be built.</param>
    public static IReadOnlyList<int[]> Rows(int[] sizes, Func<int[], bool> isImpossible)
    {
        var cover = new PairwiseCover(sizes, isImpossible);
        var rows = new List<int[]>();
        for (var first = 0; first < sizes.Length; first++)
        {
            for (var second = first + 1; second < sizes.Length; second++) cover.AddRows(first, second, rows);
        }

        return rows;
    }

    private void AddRows(int first, int second, List<int[]> rows)
    {
        for (var one = 0; one < _sizes[first]; one++)
        {
            for (var other = 0; other < _sizes[second]; other++)
            {
                if (_covered[_offsets[first] + one, _offsets[second] + other]) continue;
                if (Row(first, one, second, other) is not { } row) continue;
                rows.Add(row);
                Cover(row);
            }
        }
    }

    private int[]? Row(int first, int one, int second, int other)
    {
        var row = new int[_sizes.Length];
        Array.Fill(row, Open);
        (row[first], row[second]) = (one, other);
        _tries = 0;
        return !_isImpossible(row) && Complete(row, 0, first, second) ? row : null;
    }

    private bool Complete(int[] row, int at, int first, int second)
    {
        while (at == first || at == second) at++;
        if (at == row.Length) return true;
        foreach (var value in Enumerable.Range(0, _sizes[at]).OrderByDescending(value => Gain(row, at, value)).ThenByDescending(value => Left(at, value)))
        {
            if (++_tries > MostTries) return false;
            row[at] = value;
            if (!_isImpossible(row) && Complete(row, at + 1, first, second)) return true;
            row[at] = Open;
        }

        return false;
    }

    private int Gain(int[] row, int at, int value)
    {
        var gain = 0;
        for (var other = 0; other < row.Length; other++)
        {
            if (row[other] != Open && other != at && !IsCovered(at, value, other, row[other])) gain++;
        }

        return gain;
    }

    private int Left(int at, int value)
    {
        var left = 0;
        for (var other = 0; other < _sizes.Length; other++)
        {
            for (var second = 0; other != at && second < _sizes[other]; second++)
            {
                if (!IsCovered(at, value, other, second)) left++;
            }
        }

        return left;
    }

    private bool IsCovered(int first, int one, int second, int other) => first < second
        ? _covered[_offsets[first] + one, _offsets[second] + other]
        : _covered[_offsets[second] + other, _offsets[first] + one];

    private void Cover(int[] row)
    {
        for (var first = 0; first < row.Length; first++)
        {
            for (var second = first + 1; second < row.Length; second++) _covered[_offsets[first] + row[first], _offsets[second] + row[second]] = true;
        }
    }
}
