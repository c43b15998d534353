namespace EolSequencer.Language.Yaml;

/// <summary>How an author wrote a text.</summary>
internal enum ScalarStyle
{
    /// <summary>Without quotes.</summary>
    Plain,
    SingleQuoted,
    DoubleQuoted,

    /// <summary>A block behind <c>|</c>: its lines stay lines.</summary>
    Literal,

    /// <summary>A block behind <c>&gt;</c>: its lines are joined.</summary>
    Folded,
}
