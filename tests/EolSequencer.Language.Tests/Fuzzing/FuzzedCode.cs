using System.Collections.Immutable;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Expressions.Compiling;
using EolSequencer.Language.Source;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Tests.Fuzzing;

/// <summary>Compiles an expression, and looks at what the code it came to reaches for: nothing beyond reading and calculating.</summary>
internal static class FuzzedCode
{
    // Of the framework: numbers, texts and what the compiler itself writes. Not one of these opens, starts or waits.
    private static readonly ImmutableHashSet<string> Framework =
    [
        "System.Object", "System.Decimal", "System.String", "System.Boolean", "System.Int32", "System.Int64", "System.Double", "System.Char", "System.Func`2", "System.ReadOnlySpan`1",
        "System.Math", "System.Nullable`1", "System.Array", "System.FormattableString", "System.ValueType", "System.Lazy`1",
    ];

    public static bool Accepts(SourceText source, Report report)
    {
        if (YamlReader.Read(source, report) is not YamlMap { Entries: [{ Value: YamlScalar node }, ..] }) return false;
        var expression = new Expression(node.Text, node.PlaceOf(0, node.Text.Length));
        if (UnitCompiler.Compile([new ExpressionText(node, 0, SmallPlant.Names, Wanted.Anything, expression)], report) is not { } unit) return false;
        Assert.All(TypesOf(unit.Code), type => Assert.True(IsHarmless(type), $"the code reaches for {type}"));
        return true;
    }

    private static bool IsHarmless(string type) =>
        type.StartsWith("EolSequencer.", StringComparison.Ordinal) || type.StartsWith("System.Runtime.CompilerServices.", StringComparison.Ordinal)
        || type.StartsWith("System.Diagnostics.Debug", StringComparison.Ordinal) || type.StartsWith("System.Diagnostics.CodeAnalysis.", StringComparison.Ordinal)
        || type.StartsWith("Microsoft.CodeAnalysis.", StringComparison.Ordinal) || type.StartsWith('.') || Framework.Contains(type);

    private static IEnumerable<string> TypesOf(byte[] code)
    {
        using var file = new PEReader(ImmutableArray.Create(code));
        var metadata = file.GetMetadataReader();
        return [.. metadata.TypeReferences.Select(metadata.GetTypeReference).Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}")];
    }
}
