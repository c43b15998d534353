using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Plants;

/// <summary>One file of a plant; read when somebody asks what it says, and then once.</summary>
public sealed class PlantFile
{
    private readonly Report _report;
    private readonly PlantTexts _texts;
    private SourceText? _text;
    private YamlNode? _root;
    private bool _hasErrors;

    internal PlantFile(string path, string relativePath, FileHeader? header, Report report, PlantTexts texts)
    {
        Path = path;
        RelativePath = relativePath;
        Kind = header?.Kind;
        Id = header?.Id ?? "";
        _report = report;
        _texts = texts;
    }

    /// <summary>Full path.</summary>
    public string Path { get; }

    /// <summary>Path below the plant's folder, with / between its parts.</summary>
    public string RelativePath { get; }

    /// <summary>Its kind; null when the file does not begin with one.</summary>
    public FileKind? Kind { get; }

    /// <summary>Its id within the kind; empty when there is none.</summary>
    public string Id { get; }

    /// <summary>The text, or null when it cannot be read, which has then been reported.</summary>
    internal SourceText? Text
    {
        get
        {
            Read();
            return _text;
        }
    }

    /// <summary>The document, or null when there is none, which has then been reported.</summary>
    internal YamlNode? Root
    {
        get
        {
            Read();
            return _root;
        }
    }

    /// <summary>True when its syntax has a fault, also when the document could be mended and is there.</summary>
    internal bool HasErrors
    {
        get
        {
            Read();
            return _hasErrors;
        }
    }

    /// <summary>Where the id stands, or the file as a whole.</summary>
    internal SourcePlace IdPlace =>
        Root is YamlMap { Entries: [{ Value: YamlScalar id }, ..] } ? id.ContentPlace
        : Root?.Place ?? SourcePlace.None with { File = RelativePath };

    /// <summary>True when somebody has asked what it says.</summary>
    internal bool IsRead { get; private set; }

    /// <summary>The file as a record keeps it; null when it cannot be read.</summary>
    internal SourceCopy? Copy => Text is { } text ? new SourceCopy(RelativePath, text.Sha256, text.Text) : null;

    private void Read()
    {
        if (IsRead) return;
        IsRead = true;
        var own = new Report();
        (_text, _root) = _texts.Read(Path, own);
        _hasErrors = own.HasErrors;
        _report.Absorb(own, static _ => true);
    }
}
