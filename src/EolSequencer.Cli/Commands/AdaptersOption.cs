using System.CommandLine;
using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.Plugins;

namespace EolSequencer.Cli.Commands;

/// <summary>Adapters for real equipment: those of the program and those of plug-ins.</summary>
internal static class AdaptersOption
{
    /// <summary>Where plug-ins are looked for when nothing is said: beside the program.</summary>
    public static string Usual => Path.Combine(AppContext.BaseDirectory, "adapters");

    public static Option<string?> Make() => new("--adapters")
    {
        Description = "A folder of plug-ins with adapters and keys; without it the folder 'adapters' beside the program.",
        HelpName = "DIR",
    };

    /// <summary>What station files may name.</summary>
    /// <param name="folder">The folder that was typed; null: none.</param>
    /// <param name="fault">What is wrong with the first plug-in that cannot be used; null when all is well.</param>
    public static AdapterRegistry? Load(string? folder, out string? fault)
    {
        fault = folder is not null && !Directory.Exists(folder) ? $"--adapters {folder}: there is no such folder" : null;
        if (fault is not null) return null;
        var (plugins, faults) = PluginFolder.Load(folder ?? Usual);
        fault = faults.Count > 0 ? faults[0] : null;
        if (fault is not null) return null;
        try
        {
            return StandardAdapters.Make(new PluginKeys(plugins)).With(plugins.SelectMany(plugin => plugin.Adapters));
        }
        catch (ArgumentException twice)
        {
            fault = $"{folder ?? Usual}: {twice.Message}";
            return null;
        }
    }
}
