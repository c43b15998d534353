namespace EolSequencer.Simulators.Operators;

/// <summary>How the person at the station errs; careful and quick by default.</summary>
internal sealed class OperatorHabits
{
    public bool HasLeft { get; set; }

    /// <summary>Everything takes so many times as long.</summary>
    public double Slowness { get; set; } = 1;

    public bool ScansOtherLabel { get; set; }

    public bool MixesUpSides { get; set; }

    /// <summary>The first time the pedal is pressed, it is let go at once.</summary>
    public bool LetsGoOfPedal { get; set; }

    /// <summary>Steps at which nothing is done: id or pattern.</summary>
    public HashSet<string> Ignored { get; } = [];

    /// <summary>Steps at which good is called bad and bad good: id or pattern.</summary>
    public HashSet<string> Misjudged { get; } = [];
}
