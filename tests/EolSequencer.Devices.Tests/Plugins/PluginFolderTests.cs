using System.Reflection;
using System.Reflection.Emit;
using System.Runtime.Loader;
using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.Plugins;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Devices.Tests.Plugins;

/// <summary>Assemblies from outside: what can be used is, what cannot is told before any of its code runs.</summary>
public sealed class PluginFolderTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "eol-plugins-" + Guid.NewGuid().ToString("N"));

    private static string Sample => Path.Combine(AppContext.BaseDirectory, "plugins");

    public void Dispose()
    {
        if (Directory.Exists(_folder)) Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task The_sample_adds_an_adapter_that_opens_and_reads()
    {
        var (plugins, faults) = PluginFolder.Load(Sample);
        Assert.Empty(faults);
        var registry = StandardAdapters.Make(null).With(Assert.Single(plugins).Adapters);
        var opening = await SettingBench.OpenAsync(registry.Find("sample-counter")!, new VirtualTime(DateTimeOffset.UnixEpoch), ("from", "41"));
        await using var device = opening.Device!;
        Assert.Equal("sample counter", (await device.IdentifyAsync(default)).Value?.ToString());
        var request = new ReadRequest(Describe.Channel(null!), null, 0);
        Assert.Equal("41", (await device.ReadAsync(request, default)).Value?.ToString());
        Assert.Equal("42", (await device.ReadAsync(request, default)).Value?.ToString());
    }

    [Fact]
    public void The_sample_lives_in_a_context_of_its_own_and_shares_the_program_s_types()
    {
        var plugin = Assert.Single(PluginFolder.Load(Sample).Plugins);
        var context = AssemblyLoadContext.GetLoadContext(plugin.GetType().Assembly);
        Assert.NotSame(AssemblyLoadContext.Default, context);
        Assert.Equal("SamplePlugin", context!.Name);
        Assert.DoesNotContain(context.Assemblies, assembly => assembly.GetName().Name == "EolSequencer.Devices");
    }

    [Fact]
    public void The_sample_knows_the_key_of_one_unit()
    {
        var keys = new PluginKeys(PluginFolder.Load(Sample).Plugins);
        Assert.Equal([0xFE, 0xDC], keys.KeyOf("gateway", 1, [0x01, 0x23]));
        Assert.Null(keys.KeyOf("brakes", 1, [0x01, 0x23]));
    }

    [Fact]
    public void A_folder_that_is_not_there_has_no_plugins() => Assert.Equal((0, 0), Counts(PluginFolder.Load(_folder)));

    [Fact]
    public void A_folder_without_its_assembly_is_told()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "Empty"));
        Assert.Contains("there is no Empty.dll", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_assembly_is_told()
    {
        File.WriteAllText(PathOf("Junk"), "no code");
        Assert.Contains("cannot be loaded", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void One_built_for_another_contract_is_told_with_both_numbers()
    {
        Save("Old", contract: 99);
        var refusal = Refusal();
        Assert.Contains("built for contract 99", refusal, StringComparison.Ordinal);
        Assert.Contains($"has contract {PluginContractAttribute.Current}", refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void One_that_names_no_contract_is_told_what_to_write()
    {
        Save("Bare", contract: null);
        Assert.Contains("PluginContract(PluginContractAttribute.Current)", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void One_without_a_plugin_class_is_told()
    {
        Save("Idle", contract: PluginContractAttribute.Current);
        Assert.Contains("has 0 public classes that implement IPlugin", Refusal(), StringComparison.Ordinal);
    }

    private static (int Plugins, int Faults) Counts((IReadOnlyList<IPlugin> Plugins, IReadOnlyList<string> Faults) loaded) => (loaded.Plugins.Count, loaded.Faults.Count);

    private string Refusal()
    {
        var (plugins, faults) = PluginFolder.Load(_folder);
        Assert.Empty(plugins);
        return Assert.Single(faults);
    }

    private string PathOf(string name)
    {
        Directory.CreateDirectory(Path.Combine(_folder, name));
        return Path.Combine(_folder, name, name + ".dll");
    }

    private void Save(string name, int? contract)
    {
        var assembly = new PersistedAssemblyBuilder(new AssemblyName(name), typeof(object).Assembly);
        assembly.DefineDynamicModule(name);
        if (contract is { } version)
        {
            assembly.SetCustomAttribute(new CustomAttributeBuilder(typeof(PluginContractAttribute).GetConstructor([typeof(int)])!, [version]));
        }

        assembly.Save(PathOf(name));
    }
}
