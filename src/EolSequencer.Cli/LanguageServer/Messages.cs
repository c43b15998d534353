using EolSequencer.Language.Editing;

namespace EolSequencer.Cli.LanguageServer;

// The parts of the Language Server Protocol (version 3.17) that are spoken here, under the protocol's own names.

internal sealed record Position(int Line, int Character)
{
    public TextPosition ToText() => new(Line, Character);

    public static Position Of(TextPosition position) => new(position.Line, position.Column);
}

internal sealed record Range(Position Start, Position End)
{
    public TextRange ToText() => new(Start.ToText(), End.ToText());

    public static Range Of(TextRange range) => new(Position.Of(range.Start), Position.Of(range.End));
}

internal sealed record DocumentId(string Uri, int? Version = null);

internal sealed record DocumentText(string Uri, int Version, string Text);

internal sealed record DidOpen(DocumentText TextDocument);

internal sealed record DidClose(DocumentId TextDocument);

/// <param name="Range">What is replaced; null: the whole text.</param>
internal sealed record ContentChange(Range? Range, string Text);

internal sealed record DidChange(DocumentId TextDocument, ContentChange[] ContentChanges);

internal sealed record FileChange(string Uri, int Type);

internal sealed record FilesChanged(FileChange[] Changes);

internal sealed record DocumentPosition(DocumentId TextDocument, Position Position);

internal sealed record PublishedDiagnostic(Range Range, int Severity, string Code, string Source, string Message);

internal sealed record PublishDiagnostics(string Uri, IReadOnlyList<PublishedDiagnostic> Diagnostics);

internal sealed record TextEdit(Range Range, string NewText);

internal sealed record CompletionItem(string Label, int Kind, string? Detail, TextEdit TextEdit);

internal sealed record CompletionList(bool IsIncomplete, IReadOnlyList<CompletionItem> Items);

internal sealed record MarkupContent(string Kind, string Value);

internal sealed record Hover(MarkupContent Contents, Range Range);

internal sealed record Location(string Uri, Range Range);

internal sealed record SyncOptions(bool OpenClose, int Change);

internal sealed record CompletionOptions(string[] TriggerCharacters);

internal sealed record Capabilities(string PositionEncoding, SyncOptions TextDocumentSync, CompletionOptions CompletionProvider, bool HoverProvider, bool DefinitionProvider);

internal sealed record ServerInfo(string Name, string Version);

internal sealed record Initialized(Capabilities Capabilities, ServerInfo ServerInfo);
