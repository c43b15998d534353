namespace EolSequencer.Model.Units;

/// <summary>How far apart two short spellings are.</summary>
internal static class EditDistance
{
    /// <summary>The least number of characters to put in, take out or change that turns one text into the other; case counts.</summary>
    public static int Between(string first, string second)
    {
        var row = Enumerable.Range(0, second.Length + 1).ToArray();
        for (var i = 1; i <= first.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= second.Length; j++)
            {
                var changed = diagonal + (first[i - 1] == second[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(changed, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[second.Length];
    }
}
