namespace EolSequencer.Language.Scripts;
public sealed record ScriptResult(Model.Ports.OperatorScript? Script, IReadOnlyList<Diagnostics.Diagnostic> Diagnostics);
public static class ScriptLoader { public static ScriptResult Load(string path) => new(null, []); }
