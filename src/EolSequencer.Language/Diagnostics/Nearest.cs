namespace EolSequencer.Language.Diagnostics;

/// <summary>Finds the known word an author most likely meant.</summary>
public static class Nearest
{
    private const int LongestWord = 64;

    /// <summary>
    /// The candidate that is fewest typing slips away (a letter missing, too many, wrong, or two swapped; case does not
    /// count), or <c>null</c> when none is near: one slip is always near, further ones up to a third of the word.
    /// Among equals the first candidate wins.
    /// </summary>
    public static string? Of(string word, IEnumerable<string> candidates)
    {
        if (word.Length is 0 or > LongestWord) return null;
        var nearEnough = Math.Max(1, word.Length / 3);
        string? best = null;
        foreach (var candidate in candidates)
        {
            if (Math.Abs(candidate.Length - word.Length) > nearEnough) continue;
            var slips = Distance(word.ToUpperInvariant(), candidate.ToUpperInvariant());
            if (slips > nearEnough || slips >= candidate.Length) continue;
            best = candidate;
            if (slips == 0) break;
            nearEnough = slips - 1;
        }

        return best;
    }

    /// <summary>The number of typing slips between two words (Damerau-Levenshtein, no letter touched twice).</summary>
    internal static int Distance(string left, string right)
    {
        var beforePrevious = new int[right.Length + 1];
        var previous = new int[right.Length + 1];
        var current = new int[right.Length + 1];
        for (var column = 0; column <= right.Length; column++) previous[column] = column;

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
