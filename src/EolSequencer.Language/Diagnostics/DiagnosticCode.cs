namespace EolSequencer.Language.Diagnostics;

/// <summary>One kind of finding. Every code is declared once, as a static field of its family's <c>…Codes</c> class.</summary>
/// <param name="Id">Three letters for the family and three digits, for example <c>YML014</c>. Never reused for another meaning.</param>
/// <param name="Severity">How much a finding of this kind weighs.</param>
/// <param name="Title">What is wrong, in general: one short phrase.</param>
/// <param name="Cure">What to try, in general. Shown as the hint of a finding that brings none of its own.</param>
public sealed record DiagnosticCode(string Id, Severity Severity, string Title, string Cure)
{
    public override string ToString() => Id;
}
