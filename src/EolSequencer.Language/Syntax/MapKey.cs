namespace EolSequencer.Language.Syntax;

/// <summary>A key that a map may have.</summary>
/// <param name="Name">As it is written.</param>
/// <param name="Form">What may stand behind it.</param>
/// <param name="Meaning">What it is for, in half a sentence, as an editor shows it beside the key.</param>
internal sealed record MapKey(string Name, ValueForm Form, string Meaning)
{
    /// <summary>A key whose value is read by its own rules and about which nobody has said anything yet.</summary>
    public static implicit operator MapKey(string name) => new(name, Forms.Anything, "");
}
