using System.Collections.Frozen;
using System.Reflection;
using EolSequencer.Language.Expressions.Support;
using Microsoft.CodeAnalysis;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>The features that an author may take of a trace, by name.</summary>
internal static class TraceFeatures
{
    private const BindingFlags Own = BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    private static readonly Type[] Traces = [typeof(NumberTrace<,>), typeof(QuantityTrace<,>), typeof(SwitchTrace<,>)];

    private static readonly FrozenDictionary<string, FrozenSet<string>> NamesByTrace = Traces.ToFrozenDictionary(
        trace => trace.Name, trace => Members(trace).Select(member => member.Name).ToFrozenSet(StringComparer.Ordinal), StringComparer.Ordinal);

    private static readonly FrozenSet<string> Inexact = Traces.SelectMany(Members)
        .Where(member => member.IsDefined(typeof(InexactAttribute))).Select(member => member.Name).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>True for a type of a trace.</summary>
    public static bool IsTrace(ITypeSymbol? type) =>
        type is INamedTypeSymbol named && NamesByTrace.ContainsKey(named.MetadataName) && named.ContainingNamespace.ToDisplayString() == typeof(NumberTrace<,>).Namespace;

    /// <summary>True for a feature of such a type.</summary>
    public static bool Has(ITypeSymbol trace, string name) => NamesByTrace[trace.MetadataName].Contains(name);

    /// <summary>The features of a type of trace, in the order of the alphabet.</summary>
    public static IEnumerable<string> Names(ITypeSymbol trace) => NamesByTrace[trace.MetadataName].Order(StringComparer.Ordinal);

    /// <summary>True when only the numbers of a trace have the feature, so that a unit comes first.</summary>
    public static bool WantsUnit(ITypeSymbol trace, string name) =>
        trace.MetadataName == typeof(QuantityTrace<,>).Name && NamesByTrace[typeof(NumberTrace<,>).Name].Contains(name);

    /// <summary>True when the feature works in binary floating point.</summary>
    public static bool IsInexact(string name) => Inexact.Contains(name);

    /// <summary>The features as they are written in code, one for each way to call them.</summary>
    /// <remarks>The accessors of a property carry its name behind a prefix and are no features of their own.</remarks>
    public static IEnumerable<MemberInfo> Members(Type trace) =>
        trace.GetMembers(Own).Where(member => member is PropertyInfo or MethodInfo { IsSpecialName: false });
}
