using EolSequencer.Model.Plants;
using EolSequencer.Model.Texts;

namespace EolSequencer.Devices.Adapters;

/// <summary>The settings of a role, each known to its adapter and of its form.</summary>
public sealed class CheckedSettings
{
    private readonly Setting.Map _written;

    private CheckedSettings(Setting.Map written) => _written = written;

    /// <summary>The settings of a binding, when all of them are right.</summary>
    /// <param name="fault">What is wrong with the first that is not: place, what was found, what to write; null when all is well.</param>
    public static CheckedSettings? Read(AdapterDescription adapter, AdapterBinding binding, out string? fault)
    {
        fault = binding.Settings.Entries.Select(entry => Objection(adapter, entry)).FirstOrDefault(found => found is not null)
            ?? adapter.Settings.Where(one => one.IsRequired && binding.Settings.Find(one.Name) is null)
                .Select(one => $"{binding.Place}: '{adapter.Name}' wants a setting '{one.Name}', {one.What}; write  {one.Name}: {one.Form.Example}")
                .FirstOrDefault();
        return fault is null ? new CheckedSettings(binding.Settings) : null;
    }

    /// <summary>The setting as it was written; null when it was not.</summary>
    public Setting? Find(string name) => _written.Find(name);

    /// <summary>A text or word; null when it was not written.</summary>
    public string? Text(string name) => (Find(name) as Setting.Scalar)?.Text;

    /// <inheritdoc cref="SettingForm.Time"/>
    public TimeSpan? Time(string name) => Find(name) is { } setting ? SettingForm.Time.Of(setting) : null;

    /// <inheritdoc cref="SettingForm.Whole"/>
    public long? Whole(string name) => Find(name) is { } setting ? SettingForm.Whole.Of(setting) : null;

    /// <inheritdoc cref="SettingForm.YesNo"/>
    public bool? YesNo(string name) => Text(name) is { } word ? word == "yes" : null;

    /// <inheritdoc cref="SettingForm.BitRate"/>
    public int? BitRate(string name) => Find(name) is { } setting ? SettingForm.BitRate.Of(setting) : null;

    private static string? Objection(AdapterDescription adapter, Setting.Entry entry)
    {
        if (adapter.Settings.FirstOrDefault(one => one.Name == entry.Name) is not { } known)
        {
            var names = adapter.Settings.Select(one => one.Name).ToList();
            var near = names.MinBy(name => EditDistance.Between(name, entry.Name));
            var guess = near is not null && EditDistance.Between(near, entry.Name) <= near.Length / 3 ? $"; did you mean {near}?" : "";
            return $"{entry.NamePlace}: '{adapter.Name}' has no setting '{entry.Name}'; it knows {(names.Count == 0 ? "none" : string.Join(", ", names))}{guess}";
        }

        var written = entry.Value is Setting.Scalar scalar ? $"'{scalar.Text}'" : "this";
        return known.Form.Takes(entry.Value) ? null : $"{entry.Value.Place}: {written} is no {entry.Name}; write {known.Form.Wanted}, such as  {entry.Name}: {known.Form.Example}";
    }
}
