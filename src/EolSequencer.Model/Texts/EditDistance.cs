namespace EolSequencer.Model.Texts;

/// <summary>How far apart two short words are.</summary>
public static class EditDistance
{
    /// <summary>
    /// The number of typing slips between two words: a letter missing, too many, wrong, or two neighbours swapped; no letter
    /// is touched twice and case counts.
    /// </summary>
    /// <remarks>The restricted distance of Damerau and Levenshtein.</remarks>
    public static int Between(string left, string right)
    {
        var beforePrevious = new int[right.Length + 1];
        var previous = Enumerable.Range(0, right.Length + 1).ToArray();
        var current = new int[right.Length + 1];
        for (var row = 1; row <= left.Length; row++)
        {
            current[0] = row;
            for (var column = 1; column <= right.Length; column++)
            {
                var wrongLetter = previous[column - 1] + (left[row - 1] == right[column - 1] ? 0 : 1);
                var best = Math.Min(wrongLetter, Math.Min(previous[column], current[column - 1]) + 1);
                var swapped = row > 1 && column > 1 && left[row - 1] == right[column - 2] && left[row - 2] == right[column - 1];
                current[column] = swapped ? Math.Min(best, beforePrevious[column - 2] + 1) : best;
            }

            (beforePrevious, previous, current) = (previous, current, beforePrevious);
        }

        return previous[right.Length];
    }
}
