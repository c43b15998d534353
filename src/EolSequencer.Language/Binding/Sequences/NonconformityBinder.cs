using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads what a failed check is called and where the fault may be.</summary>
internal static class NonconformityBinder
{
    private static readonly MapShape Shape = new("a nonconformity", ["code"], ["where"]);

    public static NonconformityHint? Read(MapReader keys, Report report)
    {
        if (!keys.Has("nonconformity") || keys.Open("nonconformity", Shape) is not { } inner) return null;
        ImmutableArray<string> where = inner.Find("where") is { } node ? Ids.IndexValues(node, "'where'", report) ?? [] : [];
        return inner.Find("code") is { } code && Ids.Name(code, "'code'", report) is { } name ? new NonconformityHint(name, where) : null;
    }
}
