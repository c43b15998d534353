using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Editing;

namespace EolSequencer.Cli.LanguageServer;

/// <summary>Puts answers into the words and numbers of the protocol.</summary>
internal static class Translation
{
    public static PublishedDiagnostic Of(Diagnostic one)
    {
        var severity = one.Severity switch { Severity.Error => 1, Severity.Warning => 2, _ => 3 };
        return new PublishedDiagnostic(Range.Of(TextRange.Of(one.Place)), severity, one.Code.Id, "eol", $"{one.Found} – {one.Hint}");
    }

    public static CompletionItem Of(Proposal one)
    {
        var kind = one.Kind switch
        {
            ProposalKind.Key => 10, // Property
            ProposalKind.Word => 12, // Value
            ProposalKind.Channel => 5, // Field
            ProposalKind.Action => 2, // Method
            ProposalKind.Unit => 11, // Unit
            ProposalKind.Function => 3, // Function
            ProposalKind.File => 18, // Reference
            _ => 6, // Variable
        };
        return new CompletionItem(one.Text.TrimEnd(' ', ':'), kind, one.Detail.Length == 0 ? null : one.Detail, new TextEdit(Range.Of(one.Replaced), one.Text));
    }

    public static Hover Of(Explanation one) =>
        new(new MarkupContent("plaintext", string.Join('\n', one.Lines.Prepend(one.Title))), Range.Of(one.Range));
}
