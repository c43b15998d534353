using System.Collections.Frozen;
using System.Reflection;
using EolSequencer.Language.Expressions.Support;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>The functions an author may call, by name.</summary>
internal static class FunctionTable
{
    private static readonly FrozenDictionary<string, bool> InexactByName =
        typeof(Functions).GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .GroupBy(method => method.Name, StringComparer.Ordinal)
            .ToFrozenDictionary(group => group.Key, group => group.Any(IsMarked), StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, Type?> ResultByName =
        typeof(Functions).GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly)
            .GroupBy(method => method.Name, StringComparer.Ordinal)
            .ToFrozenDictionary(group => group.Key, OnlyResult, StringComparer.Ordinal);

    public static IEnumerable<string> Names => InexactByName.Keys.Append("edges").Order(StringComparer.Ordinal);

    public static bool IsKnown(string name) => InexactByName.ContainsKey(name);

    /// <summary>True when the function works in binary floating point.</summary>
    public static bool IsInexact(string name) => InexactByName[name];

    /// <summary>What a function gives, whatever it is given; null when that depends.</summary>
    public static Type? ResultOf(string name) => ResultByName.GetValueOrDefault(name);

    private static Type? OnlyResult(IEnumerable<MethodInfo> overloads) =>
        overloads.Select(method => method.ReturnType).Distinct().ToList() is [var only] ? only : null;

    private static bool IsMarked(MethodInfo method) => method.IsDefined(typeof(InexactAttribute));
}
