namespace EolSequencer.Model.Values;

/// <summary>A text; equal by code point.</summary>
public sealed record TextValue(string Text) : Value
{
    public override ValueKind Kind => ValueKind.Text;

    /// <summary>The text itself.</summary>
    public override string ToString() => Text;
}
