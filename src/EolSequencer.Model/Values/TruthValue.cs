namespace EolSequencer.Model.Values;

/// <summary>Yes or no.</summary>
public sealed record TruthValue : Value
{
    private TruthValue(bool isTrue) => IsTrue = isTrue;

    public static TruthValue Yes { get; } = new(true);

    public static TruthValue No { get; } = new(false);

    public bool IsTrue { get; }

    public override ValueKind Kind => ValueKind.Truth;

    /// <summary>The shared instance.</summary>
    public static TruthValue Of(bool isTrue) => isTrue ? Yes : No;

    /// <summary><c>yes</c> or <c>no</c>, as files write it.</summary>
    public override string ToString() => IsTrue ? "yes" : "no";
}
