using System.Reflection;
using EolSequencer.Language.Expressions.Compiling;
using Microsoft.CodeAnalysis;

namespace EolSequencer.Language.Scratch;

/// <summary>What a line of C# may use: what expressions may, and the usual parts of the runtime.</summary>
internal static class ScratchReferences
{
    private static readonly string[] Usual =
    [
        "System.Collections", "System.Collections.Immutable", "System.Console", "System.Linq", "System.Text.RegularExpressions", "System.Threading", "System.Threading.Thread",
    ];

    public static IReadOnlyList<MetadataReference> All { get; } = [.. ReferenceSet.All, .. Usual.Select(name => ReferenceSet.Of(Assembly.Load(name)))];
}
