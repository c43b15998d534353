using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads the parameters of a sequence or fragment.</summary>
internal static class ParameterBinder
{
    private static readonly MapShape Shape = new(
        "a parameter",
        [],
        [
            .. Shapes.Keys,
            new("default", Forms.Either(Forms.Text, Forms.List(Forms.Text)), "its value when nobody gives one"),
            new("window", Forms.Text, "what its value must lie in"),
        ],
        Shapes.EitherOf);

    /// <summary>The key that holds them.</summary>
    public static MapKey Key { get; } = new("parameters", Forms.Names(Ids.FirstNameForm, Forms.Map(Shape)), "values that may be set without touching steps");

    /// <param name="roles">Names of devices, which no parameter may have.</param>
    public static ImmutableArray<BoundParameter> Bind(YamlMap? map, IEnumerable<string> roles, Report report)
    {
        var parameters = ImmutableArray.CreateBuilder<BoundParameter>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.FirstName(key, "a parameter", report);
            if (roles.Contains(key.Text)) report.Add(NameCodes.Twice, key.Place, $"'{key.Text}' is already the name of a device");
            if (MapReader.Open(value, Shape, report) is not { } keys || Shapes.Read(keys) is not { } shape || name is null) continue;
            var window = keys.Find("window") is { } node ? ParameterWindow.Read(node, shape, report) : null;
            var given = keys.Find("default") is { } written ? WrittenValue.Read(written, "'default'", shape, report) : null;
            if (given is not null && window is not null) window.Check(given, keys.Find("default")!, $"the default of '{name}'", report);
            parameters.Add(new BoundParameter(key, shape, keys.Has("default"), given, window));
        }

        return parameters.ToImmutable();
    }
}
