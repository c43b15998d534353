using System.Reflection;
using System.Reflection.Metadata;
using EolSequencer.Language.Expressions.Support;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>What compiled expressions may refer to: the runtime's core, the model and the support beside this compiler.</summary>
/// <remarks>
/// Read from memory, because a program published as one file has no files to read. Kept for the life of the process: the
/// compiler keeps what it has learned about a reference with it, which makes the next load several times faster.
/// </remarks>
internal static class ReferenceSet
{
    public static IReadOnlyList<MetadataReference> All { get; } =
    [
        Of(typeof(object).Assembly),
        Of(Assembly.Load("System.Runtime")),
        Of(typeof(Value).Assembly),
        Of(typeof(ExpressionUnit).Assembly),
    ];

    /// <summary>An assembly of this process, from its metadata in memory.</summary>
    public static unsafe PortableExecutableReference Of(Assembly assembly)
    {
        if (!assembly.TryGetRawMetadata(out var start, out var length))
        {
            throw new InvalidOperationException($"{assembly.GetName().Name} has no metadata in memory");
        }

        return AssemblyMetadata.Create(ModuleMetadata.CreateFromMetadata((nint)start, length)).GetReference(display: assembly.GetName().Name);
    }
}
