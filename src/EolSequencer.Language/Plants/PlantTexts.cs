using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Plants;

/// <summary>Where the texts of a plant's files come from: the disk, an editor's windows before it, or a record.</summary>
internal class PlantTexts
{
    /// <summary>Every text as it stands on disk.</summary>
    public static PlantTexts OnDisk { get; } = new();

    protected PlantTexts() { }

    /// <summary>The text and document of a file; null where it cannot be read, which has then been reported.</summary>
    public virtual (SourceText? Text, YamlNode? Root) Read(string path, Report report)
    {
        var text = SourceFiles.TryRead(path, report);
        return (text, text is null ? null : YamlReader.Read(text, report));
    }

    /// <summary>The text of a file beside the documents, such as a table; null where it cannot be read, which has then been reported.</summary>
    /// <param name="path">Full path.</param>
    public virtual SourceText? ReadPlain(string path, Report report) => SourceFiles.TryRead(path, report);

    /// <summary>Whether such a file is there.</summary>
    /// <param name="path">Full path.</param>
    public virtual bool IsThere(string path) => File.Exists(path);

    /// <summary>The folder of the plant that a text belongs to, or null.</summary>
    public virtual string? RootOf(SourceText text) => PlantFolder.RootOf(text.Path);

    /// <summary>False: pictures are not kept with these texts, so none is looked for.</summary>
    public virtual bool HavePictures => true;

    /// <summary>The first bytes of a file where they are not those on disk; otherwise null.</summary>
    public virtual byte[]? Head(string path) => null;

    /// <summary>Full paths of files below a folder that may not be on disk yet.</summary>
    public virtual IEnumerable<string> Unsaved(string folder) => [];
}
