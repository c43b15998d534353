using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Binding.Plants;

/// <summary>Reads the plant's catalogue of nonconformities.</summary>
internal static class CatalogueBinder
{
    private static readonly MapShape Shape = new(
        "a nonconformity of the catalogue",
        [new("title", Forms.Texts, "what people call it")],
        [new("where", Ids.IndexList, "the places that it may have; any if nothing is said")]);

    /// <summary>The key that holds it.</summary>
    public static MapKey Key { get; } = new("nonconformities", Forms.Names(Ids.NameForm, Forms.Map(Shape)), "codes of nonconformities; with them, steps and people name no others");

    public static ImmutableArray<CatalogueCode> Read(YamlMap? map, ImmutableArray<string> languages, Report report)
    {
        var codes = ImmutableArray.CreateBuilder<CatalogueCode>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var code = Ids.Name(key, "a nonconformity", report);
            if (MapReader.Open(value, Shape, report) is not { } keys) continue;
            var title = keys.Texts("title");
            ImmutableArray<string> where = keys.Find("where") is { } node ? Ids.IndexValues(node, "'where'", report) ?? [] : [];
            if (title is null || code is null) continue;
            LanguageCheck.Run(title, languages, report);
            codes.Add(new CatalogueCode(code, title.ToLocalText(), where));
        }

        return codes.ToImmutable();
    }
}
