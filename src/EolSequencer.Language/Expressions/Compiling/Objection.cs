using EolSequencer.Language.Diagnostics;
using Microsoft.CodeAnalysis.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Why a construct is refused.</summary>
/// <param name="At">The characters meant; null: the whole construct.</param>
/// <param name="Hint">What to write instead; null: the cure of the code.</param>
internal sealed record Objection(DiagnosticCode Code, TextSpan? At, string Found, string? Hint);
