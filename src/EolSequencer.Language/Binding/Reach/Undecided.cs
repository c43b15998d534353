namespace EolSequencer.Language.Binding.Reach;

/// <summary>Ends the evaluation of a condition that options alone do not decide.</summary>
internal sealed class Undecided : Exception;
