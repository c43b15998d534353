namespace EolSequencer.Language.Editing;

/// <summary>Something that could be written at the caret.</summary>
/// <param name="Text">What is written in place of <see cref="Replaced"/>.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Detail">What it is, in a few words: a type, a unit, where it comes from.</param>
/// <param name="Replaced">The characters in front of and behind the caret that it takes the place of.</param>
public sealed record Proposal(string Text, ProposalKind Kind, string Detail, TextRange Replaced);

/// <summary>What a proposal is.</summary>
public enum ProposalKind
{
    Key,
    Word,
    Name,
    Channel,
    Action,
    Unit,
    Function,
    File,
}
