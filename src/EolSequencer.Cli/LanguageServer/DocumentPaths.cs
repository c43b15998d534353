using System.Collections.Concurrent;

namespace EolSequencer.Cli.LanguageServer;

/// <summary>Full paths for the URIs of an editor, and back in the editor's own spelling.</summary>
internal sealed class DocumentPaths
{
    private readonly ConcurrentDictionary<string, string> _spelled = new(StringComparer.Ordinal);

    /// <summary>The path; null for what is no file.</summary>
    public string? PathOf(string uri)
    {
        if (!Uri.TryCreate(uri, UriKind.Absolute, out var parsed) || !parsed.IsFile) return null;
        var path = Path.GetFullPath(parsed.LocalPath);
        _spelled[path] = uri;
        return path;
    }

    public string UriOf(string path) => _spelled.GetValueOrDefault(path) ?? new Uri(path).AbsoluteUri;
}
