using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads what a failed check is called and where the fault may be; both as the plant's catalogue has them, if it has one.</summary>
internal static class NonconformityBinder
{
    private static readonly MapShape Shape = new(
        "a nonconformity",
        [new("code", Ids.NameForm, "what it is called")],
        [new("where", Ids.IndexList, "where it may be")]);

    /// <summary>The key that holds it.</summary>
    public static MapKey Key { get; } = new("nonconformity", Forms.Map(Shape), "what a failed judge is called, and where it may be");

    public static NonconformityHint? Read(MapReader keys, Scope scope)
    {
        if (!keys.Has("nonconformity") || keys.Open("nonconformity", Shape) is not { } inner) return null;
        ImmutableArray<string> where = inner.Find("where") is { } node ? Ids.IndexValues(node, "'where'", scope.Report) ?? [] : [];
        if (inner.Find("code") is not { } code || Ids.Name(code, "'code'", scope.Report) is not { } name) return null;
        Check(name, code, inner.Find("where"), where, scope);
        return new NonconformityHint(name, where);
    }

    private static void Check(string name, YamlNode code, YamlNode? places, ImmutableArray<string> where, Scope scope)
    {
        var catalogue = scope.Context.Plant.Nonconformities;
        if (catalogue.IsEmpty) return;
        if (catalogue.FirstOrDefault(one => one.Code == name) is not { } known)
        {
            var near = Nearest.Of(name, catalogue.Select(one => one.Code));
            scope.Report.Add(SequenceCodes.UnknownNonconformity, code.Place, $"the plant's catalogue has no nonconformity '{name}'", near is null ? null : $"did you mean '{near}'?");
        }
        else if (where.FirstOrDefault(place => !known.MayBeAt(place)) is { } other)
        {
            scope.Report.Add(SequenceCodes.UnknownWhere, places!.Place, $"'{name}' is never at '{other}' by the plant's catalogue");
        }
    }
}
