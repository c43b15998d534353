using System.Diagnostics.CodeAnalysis;

namespace EolSequencer.Wire;

/// <summary>What bytes mean, or what is wrong with them.</summary>
/// <remarks>Bytes that another party sent are never a reason to throw.</remarks>
public readonly struct Decoded<T>
    where T : notnull
{
    private readonly T? _value;

    private Decoded(T? value, string? fault) => (_value, Fault) = (value, fault);

    /// <summary>What is wrong, for people; null when there is a value.</summary>
    public string? Fault { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public T Value => _value is { } value && Fault is null ? value : throw new InvalidOperationException(Fault ?? "nothing was decoded");

    /// <summary>The value, when there is one.</summary>
    public bool TryGet([MaybeNullWhen(false)] out T value)
    {
        value = _value;
        return Fault is null && value is not null;
    }

    /// <summary>The bytes make sense.</summary>
    public static implicit operator Decoded<T>(T value) => new(value, null);

    /// <summary>The bytes do not make sense.</summary>
    public static Decoded<T> Faulty(string fault) => new(default, fault);
}
