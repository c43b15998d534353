namespace EolSequencer.Model.Events;

/// <summary>Words of what runs count for.</summary>
public static class RunModes
{
    /// <summary>The word that records, logs and reports use: <c>production</c>, <c>rehearsal</c>, <c>check</c>.</summary>
    public static string Word(this RunMode mode) => mode switch
    {
        RunMode.Production => "production",
        RunMode.Rehearsal => "rehearsal",
        RunMode.Check => "check",
        _ => throw new ArgumentOutOfRangeException(nameof(mode), mode, "there are three modes"),
    };

    /// <summary>The mode of a word; false for any other text.</summary>
    public static bool TryParse(string word, out RunMode mode)
    {
        foreach (var candidate in Enum.GetValues<RunMode>())
        {
            mode = candidate;
            if (candidate.Word() == word) return true;
        }

        mode = default;
        return false;
    }
}
