using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads what a failed check is called and where the fault may be.</summary>
internal static class NonconformityBinder
{
    private static readonly MapShape Shape = new(
        "a nonconformity",
        [new("code", Ids.NameForm, "what it is called")],
        [new("where", Ids.IndexList, "where it may be")]);

    /// <summary>The key that holds it.</summary>
    public static MapKey Key { get; } = new("nonconformity", Forms.Map(Shape), "what a failed judge is called, and where it may be");

    public static NonconformityHint? Read(MapReader keys, Report report)
    {
        if (!keys.Has("nonconformity") || keys.Open("nonconformity", Shape) is not { } inner) return null;
        ImmutableArray<string> where = inner.Find("where") is { } node ? Ids.IndexValues(node, "'where'", report) ?? [] : [];
        return inner.Find("code") is { } code && Ids.Name(code, "'code'", report) is { } name ? new NonconformityHint(name, where) : null;
    }
}
