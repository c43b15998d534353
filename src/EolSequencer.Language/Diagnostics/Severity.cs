namespace EolSequencer.Language.Diagnostics;

/// <summary>How much a diagnostic weighs: an error keeps the document from being used.</summary>
public enum Severity
{
    Information,
    Warning,
    Error,
}
