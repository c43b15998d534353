using EolSequencer.Devices.Adapters;

namespace EolSequencer.Devices.Tests.Adapters;

/// <summary>Whoever writes a station file looks into one place; what stands there must be what the adapters know.</summary>
public class AdapterReferenceTests
{
    private static readonly string Text = Section(File.ReadAllText(Path.Combine(Repository.Root, "sequences", "README.md")));

    public static TheoryData<string, string> Settings => [.. StandardAdapters.Make(null).Descriptions.SelectMany(adapter => adapter.Settings.Select(setting => (adapter.Name, setting.Name)))];

    [Theory]
    [MemberData(nameof(Settings))]
    public void Every_adapter_and_setting_stands_in_the_reference(string adapter, string setting)
    {
        Assert.Contains($"`{adapter}`", Text, StringComparison.Ordinal);
        Assert.Contains($"`{setting}`", Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_example_of_a_setting_is_of_its_form() => Assert.All(
        StandardAdapters.Make(null).Descriptions.SelectMany(adapter => adapter.Settings),
        setting => Assert.True(setting.Form is SettingForm.Nested || setting.Form.Takes(new Model.Plants.Setting.Scalar(setting.Form.Example, Model.Source.SourcePlace.None)), setting.Name));

    private static string Section(string text)
    {
        var begin = text.IndexOf("### Adapters", StringComparison.Ordinal);
        return text[begin..text.IndexOf("\n### ", begin + 1, StringComparison.Ordinal)];
    }
}
