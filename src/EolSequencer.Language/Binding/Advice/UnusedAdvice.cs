using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Binding.Advice;

/// <summary>What is declared and never used.</summary>
internal static class UnusedAdvice
{
    /// <summary>Devices and parameters of a sequence or fragment.</summary>
    /// <param name="fragments">The fragments it uses: what they need, it has to have.</param>
    public static void Names(PlantFile file, IEnumerable<PlantFile> fragments, Report report)
    {
        if (file.Root is not YamlMap document) return;
        var used = NamesUsed.In(document);
        var needed = fragments.SelectMany(fragment => Entries(fragment.Root, "devices")).Select(entry => entry.Key.Text).ToHashSet(StringComparer.Ordinal);
        foreach (var (role, _) in Entries(document, "devices"))
        {
            if (!used.HoldsPartOf(role.Text) && !needed.Contains(role.Text)) report.Add(AdviceCodes.DeviceUnused, role.Place, $"no step uses '{role.Text}'");
        }

        foreach (var (parameter, _) in Entries(document, "parameters"))
        {
            if (!used.Holds(parameter.Text)) report.Add(AdviceCodes.ParameterUnused, parameter.Place, $"nothing names '{parameter.Text}'");
        }
    }

    /// <summary>Limits of a vehicle type.</summary>
    public static void Limits(PlantFile type, IReadOnlySet<string> used, Report report)
    {
        foreach (var (limit, _) in Entries(type.Root, "limits"))
        {
            if (!used.Contains(limit.Text)) report.Add(AdviceCodes.LimitUnused, limit.Place, $"no step of any sequence is judged by limits.{limit.Text}");
        }
    }

    /// <summary>Fragments and device kinds that no sequence of the plant is made from.</summary>
    public static void Files(PlantFolder folder, IReadOnlySet<PlantFile> used, Report report)
    {
        foreach (var fragment in folder.Of(FileKind.Fragment).Where(file => !used.Contains(file)))
        {
            report.Add(AdviceCodes.FragmentUnused, fragment.IdPlace, $"no sequence uses the fragment '{fragment.Id}'");
        }

        foreach (var kind in folder.Of(FileKind.DeviceKind).Where(file => !used.Contains(file)))
        {
            report.Add(AdviceCodes.KindUnused, kind.IdPlace, $"no sequence has a device of kind '{kind.Id}'");
        }
    }

    private static IReadOnlyList<YamlEntry> Entries(YamlNode? document, string key) =>
        document is YamlMap map && map.Find(key)?.Value is YamlMap inner ? inner.Entries : [];
}
