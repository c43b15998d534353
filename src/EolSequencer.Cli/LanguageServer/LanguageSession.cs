using EolSequencer.Language.Editing;
using StreamJsonRpc;

namespace EolSequencer.Cli.LanguageServer;

/// <summary>One editor's session: what it asks and tells by the Language Server Protocol, version 3.17.</summary>
internal sealed class LanguageSession(PlantEditor editor, EditorTurns turns, DocumentPaths paths, CheckLoop checks)
{
    private const int ServerNotInitialized = -32002;
    private const int InvalidRequest = -32600;

    private readonly TaskCompletionSource<int> _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private bool _isInitialized;
    private bool _isShutDown;

    /// <summary>Ends with the exit code when the editor says so: 0 after a shutdown, else 1.</summary>
    public Task<int> Ended => _ended.Task;

    [JsonRpcMethod("initialize", UseSingleObjectParameterDeserialization = true)]
    public Initialized Initialize(object parameters)
    {
        _isInitialized = true;
        var capabilities = new Capabilities("utf-16", new SyncOptions(OpenClose: true, Change: 2), new CompletionOptions([".", "[", "\"", " "]), HoverProvider: true, DefinitionProvider: true);
        return new Initialized(capabilities, new ServerInfo("eol", typeof(LanguageSession).Assembly.GetName().Version!.ToString(3)));
    }

    [JsonRpcMethod("initialized", UseSingleObjectParameterDeserialization = true)]
    public void IsReady(object parameters)
    {
    }

    [JsonRpcMethod("shutdown")]
    public object? Shutdown()
    {
        Require();
        _isShutDown = true;
        checks.Stop();
        return null;
    }

    [JsonRpcMethod("exit")]
    public void Exit() => _ended.TrySetResult(_isShutDown ? 0 : 1);

    [JsonRpcMethod("textDocument/didOpen", UseSingleObjectParameterDeserialization = true)]
    public void DidOpen(DidOpen told)
    {
        if (paths.PathOf(told.TextDocument.Uri) is not { } path) return;
        editor.SetText(path, told.TextDocument.Text);
        checks.Changed(path);
    }

    [JsonRpcMethod("textDocument/didChange", UseSingleObjectParameterDeserialization = true)]
    public void DidChange(DidChange told)
    {
        if (paths.PathOf(told.TextDocument.Uri) is not { } path || !editor.IsOpen(path)) return;
        foreach (var change in told.ContentChanges)
        {
            if (change.Range is { } range) editor.Change(path, range.ToText(), change.Text);
            else editor.SetText(path, change.Text);
        }

        checks.Changed(path);
    }

    [JsonRpcMethod("textDocument/didClose", UseSingleObjectParameterDeserialization = true)]
    public void DidClose(DidClose told)
    {
        if (paths.PathOf(told.TextDocument.Uri) is not { } path || !editor.IsOpen(path)) return;
        turns.Take(() =>
        {
            editor.Close(path);
            return path;
        });
        checks.Changed(path);
    }

    [JsonRpcMethod("workspace/didChangeWatchedFiles", UseSingleObjectParameterDeserialization = true)]
    public void FilesChanged(FilesChanged told)
    {
        foreach (var change in told.Changes)
        {
            if (paths.PathOf(change.Uri) is { } path) checks.Changed(path);
        }
    }

    [JsonRpcMethod("textDocument/completion", UseSingleObjectParameterDeserialization = true)]
    public CompletionList Complete(DocumentPosition asked)
    {
        Require();
        var proposals = paths.PathOf(asked.TextDocument.Uri) is { } path ? turns.Take(() => editor.Propose(path, asked.Position.ToText())) : [];
        return new CompletionList(false, [.. proposals.Select(Translation.Of)]);
    }

    [JsonRpcMethod("textDocument/hover", UseSingleObjectParameterDeserialization = true)]
    public Hover? Explain(DocumentPosition asked)
    {
        Require();
        return paths.PathOf(asked.TextDocument.Uri) is { } path && turns.Take(() => editor.Explain(path, asked.Position.ToText())) is { } found ? Translation.Of(found) : null;
    }

    [JsonRpcMethod("textDocument/definition", UseSingleObjectParameterDeserialization = true)]
    public Location? FindDefinition(DocumentPosition asked)
    {
        Require();
        if (paths.PathOf(asked.TextDocument.Uri) is not { } path || turns.Take(() => editor.FindDefinition(path, asked.Position.ToText())) is not { } found) return null;
        return new Location(paths.UriOf(found.Path), Range.Of(found.Range));
    }

    private void Require()
    {
        if (!_isInitialized) throw new LocalRpcException("the session has not been initialized") { ErrorCode = ServerNotInitialized };
        if (_isShutDown) throw new LocalRpcException("the session has been shut down") { ErrorCode = InvalidRequest };
    }
}
