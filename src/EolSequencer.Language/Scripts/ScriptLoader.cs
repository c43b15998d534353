using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Scripts;

/// <summary>Loads operator scripts.</summary>
public static class ScriptLoader
{
    /// <summary>Loads a script. Trouble is a diagnostic, never an exception.</summary>
    /// <param name="path">The script's file, as the user typed it; it need not lie in a plant.</param>
    public static ScriptResult Load(string path)
    {
        var report = new Report();
        var root = SourceFiles.TryRead(path, report) is { } text ? YamlReader.Read(text, report) : null;
        var script = root is not null && PlantFiles.IsOf(root, FileKind.OperatorScript, report) ? ScriptBinder.Bind(root, report) : null;
        return new ScriptResult(report.HasErrors ? null : script, report.InOrder);
    }
}
