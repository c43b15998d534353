using System.Threading.Channels;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Editing;

namespace EolSequencer.Cli.LanguageServer;

/// <summary>
/// Checks the file that was changed last at once, and its plant when nothing has been typed for a moment. What a newer
/// change has overtaken is not published.
/// </summary>
internal sealed class CheckLoop(PlantEditor editor, EditorTurns turns, TimeProvider time, Func<string, IReadOnlyList<Diagnostic>, Task> publish)
{
    /// <summary>How long nothing is typed before the whole plant is checked.</summary>
    public static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(300);

    private readonly Channel<string> _changed = Channel.CreateUnbounded<string>(new UnboundedChannelOptions { SingleReader = true });
    private readonly Dictionary<string, IReadOnlyList<Diagnostic>> _published = new(StringComparer.Ordinal);

    private bool IsChangedAgain => _changed.Reader.TryPeek(out _);

    /// <summary>A file has another text, was opened or closed.</summary>
    public void Changed(string path) => _changed.Writer.TryWrite(path);

    /// <summary>Nothing is checked any more.</summary>
    public void Stop() => _changed.Writer.TryComplete();

    /// <summary>Runs until it is stopped.</summary>
    public async Task Run()
    {
        var reader = _changed.Reader;
        while (await reader.WaitToReadAsync())
        {
            var path = await CheckChanged(reader);
            while (path is not null && !await IsChangedWithin(Quiet, reader) && !await CheckPlant(path)) continue;
        }
    }

    private async Task<string?> CheckChanged(ChannelReader<string> reader)
    {
        var waiting = new List<string>();
        while (reader.TryRead(out var path)) if (!waiting.Contains(path)) waiting.Add(path);
        foreach (var path in waiting.Where(editor.IsOpen))
        {
            var found = turns.Take(() => editor.Check(path));
            if (!IsChangedAgain) await Publish(path, found);
        }

        return waiting.LastOrDefault();
    }

    /// <summary>True also when nothing comes any more.</summary>
    private async Task<bool> IsChangedWithin(TimeSpan quiet, ChannelReader<string> reader)
    {
        using var over = new CancellationTokenSource(quiet, time);
        try
        {
            await reader.WaitToReadAsync(over.Token);
            return true;
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }

    /// <summary>False when it was given up because somebody else wanted a turn; then it is tried again.</summary>
    private async Task<bool> CheckPlant(string path)
    {
        var found = turns.Take(() => editor.CheckPlant(path, () => !IsChangedAgain && !turns.IsWanted && !_changed.Reader.Completion.IsCompleted));
        if (found is null) return IsChangedAgain;
        foreach (var file in _published.Keys.Concat(found.Select(group => group.Key)).Where(file => file.Length > 0).Distinct().ToList()) await Publish(file, [.. found[file]]);
        return true;
    }

    private async Task Publish(string path, IReadOnlyList<Diagnostic> found)
    {
        if (_published.TryGetValue(path, out var before) ? before.SequenceEqual(found) : found.Count == 0 && !editor.IsOpen(path)) return;
        _published[path] = found;
        await publish(path, found);
    }
}
