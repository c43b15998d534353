namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>A function of a unit and the expressions that share it.</summary>
internal sealed class UnitFunction(int number)
{
    public int Number => number;

    public string Name => $"E{number}";

    /// <summary>The expressions; their changed texts are letter by letter the same.</summary>
    public List<Draft> Drafts { get; } = [];

    /// <summary>Where the changed text begins in the source of the unit.</summary>
    public int Start { get; set; }

    /// <summary>Where it ends.</summary>
    public int End => Start + Drafts[0].Written.Length;
}
