using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Texts;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>A fragment's file before its steps are bound.</summary>
internal sealed record FragmentFile(MapReader Keys, ImmutableArray<BoundParameter> Parameters, ImmutableArray<Words> Words, LocalText? Title)
{
    /// <summary>The keys of the file.</summary>
    public static MapShape File { get; } = new(
        "a fragment",
        [
            new("fragment", Ids.FileForm, "id of the fragment"),
            new("steps", NodeListBinder.Form, "steps, groups and branches"),
        ],
        [NodeRules.TitleKey, SequenceHead.DevicesKey, ParameterBinder.Key, WordsBinder.Key, DefaultsBinder.Key]);

    /// <summary>The head of the file; null: already reported.</summary>
    public static FragmentFile? Open(YamlNode root, Report report)
    {
        if (MapReader.Open(root, File, report) is not { } keys) return null;
        if (keys.Find("fragment") is { } id) Ids.OfFile(id, "a fragment", report);
        var devices = keys.FreeMap("devices")?.Entries.Select(entry => entry.Key.Text) ?? [];
        var parameters = ParameterBinder.Bind(keys.FreeMap("parameters"), devices, report);
        return new FragmentFile(keys, parameters, WordsBinder.Bind(keys.FreeMap("words"), report), keys.Texts("title")?.ToLocalText());
    }

    /// <summary>The place in front of its first step.</summary>
    /// <param name="around">The place around it; only defaults, cautions and depth go on inside.</param>
    public Scope Inside(Scope around)
    {
        var names = ArgumentNames.None(around.Context.Vehicle.Type);
        foreach (var parameter in Parameters) names = names.With(parameter.Name.Text, parameter.Shape);
        var own = Devices.Select(device => device.Role).ToHashSet(StringComparer.Ordinal);
        var roles = around.Context.Roles.RemoveRange(around.Context.Roles.Keys.Where(role => !own.Contains(role)));
        return DefaultsBinder.Inside(Keys, around with { Arguments = names, Roles = roles });
    }

    /// <summary>The roles it uses, each with the id of its kind.</summary>
    public IEnumerable<(string Role, YamlScalar Kind)> Devices => (Keys.FreeMap("devices")?.Entries ?? [])
        .Select(entry => (entry.Key.Text, entry.Value.AsText($"the kind of '{entry.Key.Text}'", Keys.Report)!))
        .Where(device => device.Item2 is not null);

    /// <summary>Whether every role of the fragment is one of the sequence, of the same kind; reported when not.</summary>
    /// <param name="used">Where the fragment is used.</param>
    public bool FindsDevices(BindingContext context, SourcePlace used)
    {
        var isWhole = true;
        foreach (var (role, wanted) in Devices)
        {
            var found = context.Roles.GetValueOrDefault(role);
            if (found?.Id == wanted.Text) continue;
            isWhole = false;
            context.Report.Add(SequenceCodes.RoleMissing, used, found is null
                ? $"the fragment needs a device '{role}' of kind '{wanted.Text}', the sequence has none"
                : $"the fragment needs '{role}' to be a {wanted.Text}, in the sequence it is a {found.Id}");
        }

        return isWhole;
    }
}
