using System.Diagnostics.CodeAnalysis;

namespace EolSequencer.Records.Administration;

/// <summary>What came of something that was asked for: it was done, or nothing was changed and this is why.</summary>
public sealed class Outcome<T>
    where T : class
{
    private Outcome(T? value, Refused? refused) => (Value, Refused) = (value, refused);

    /// <summary>What was done, durably; null when it was refused.</summary>
    public T? Value { get; }

    /// <summary>Why nothing was changed; null when it was done.</summary>
    public Refused? Refused { get; }

    /// <summary>Whether it was done.</summary>
    [MemberNotNullWhen(true, nameof(Value))]
    [MemberNotNullWhen(false, nameof(Refused))]
    public bool IsDone => Refused is null;

    public static implicit operator Outcome<T>(T value) => new(value, null);

    public static implicit operator Outcome<T>(Refused refused) => new(null, refused);
}
