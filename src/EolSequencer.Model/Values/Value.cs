namespace EolSequencer.Model.Values;

/// <summary>A value that was read, entered, computed or ordered. There is no null value: what is missing is no value.</summary>
/// <remarks>
/// <see cref="object.ToString"/> of every kind is its canonical text: the one form that records and files hold, the same
/// in every culture.
/// </remarks>
public abstract record Value
{
    private protected Value() { }

    public abstract ValueKind Kind { get; }
}
