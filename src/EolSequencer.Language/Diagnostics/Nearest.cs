using EolSequencer.Model.Texts;

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
            var slips = EditDistance.Between(word.ToUpperInvariant(), candidate.ToUpperInvariant());
            if (slips > nearEnough || slips >= candidate.Length) continue;
            best = candidate;
            if (slips == 0) break;
            nearEnough = slips - 1;
        }

        return best;
    }
}
