using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Ports;

namespace EolSequencer.Language.Scripts;

/// <summary>What loading an operator script came to.</summary>
/// <param name="Script">The script; null when there is an error.</param>
/// <param name="Diagnostics">Everything found, by file, line and column.</param>
public sealed record ScriptResult(OperatorScript? Script, IReadOnlyList<Diagnostic> Diagnostics);
