using System.Reflection;

namespace EolSequencer.Devices.Plugins;

/// <summary>
/// Loads plug-ins: each folder in a folder of plug-ins is one, and the assembly in it that has the folder's name is loaded
/// (<c>DIR/Acme/Acme.dll</c>).
/// </summary>
public static class PluginFolder
{
    /// <summary>The plug-ins of a folder, in the order of their names, and what is wrong with those that cannot be used.</summary>
    /// <param name="path">A folder that may be missing: then there are none.</param>
    public static (IReadOnlyList<IPlugin> Plugins, IReadOnlyList<string> Faults) Load(string path)
    {
        var (plugins, faults) = (new List<IPlugin>(), new List<string>());
        if (!Directory.Exists(path)) return (plugins, faults);
        foreach (var folder in Directory.GetDirectories(path).Order(StringComparer.Ordinal))
        {
            var file = Path.Combine(folder, Path.GetFileName(folder) + ".dll");
            var (plugin, fault) = File.Exists(file) ? LoadOne(file) : (null, $"{folder}: there is no {Path.GetFileName(file)}; the assembly of a plug-in is named like its folder");
            if (plugin is not null) plugins.Add(plugin);
            if (fault is not null) faults.Add(fault);
        }

        return (plugins, faults);
    }

    private static (IPlugin? Plugin, string? Fault) LoadOne(string file)
    {
        try
        {
            var assembly = new PluginContext(file).LoadFromAssemblyPath(Path.GetFullPath(file));
            return WhyNot(assembly) is { } why ? (null, $"{file}: {why}") : Make(assembly, file);
        }
        catch (Exception fault) when (fault is BadImageFormatException or FileLoadException or FileNotFoundException or TypeLoadException or ReflectionTypeLoadException or MissingMemberException)
        {
            return (null, $"{file} cannot be loaded: {fault.Message}");
        }
    }

    /// <summary>Looked at before any code of the assembly runs.</summary>
    private static string? WhyNot(Assembly assembly)
    {
        var mark = assembly.GetCustomAttributesData().FirstOrDefault(one => one.AttributeType == typeof(PluginContractAttribute));
        if (mark is null) return $"it does not say which contract it was built for; add  [assembly: PluginContract(PluginContractAttribute.Current)]";
        var version = mark.ConstructorArguments[0].Value;
        return version is PluginContractAttribute.Current
            ? null
            : $"it was built for contract {version}, this program has contract {PluginContractAttribute.Current}; build it again with this program's EolSequencer.Devices";
    }

    private static (IPlugin? Plugin, string? Fault) Make(Assembly assembly, string file)
    {
        var types = assembly.GetExportedTypes().Where(type => type is { IsClass: true, IsAbstract: false } && type.IsAssignableTo(typeof(IPlugin))).ToList();
        if (types is not [var type]) return (null, $"{file}: it has {types.Count} public classes that implement IPlugin; exactly one is wanted");
        try
        {
            return (Activator.CreateInstance(type) as IPlugin, null);
        }
        catch (TargetInvocationException fault)
        {
            return (null, $"{file}: {type.FullName} could not be made: {fault.InnerException?.Message ?? fault.Message}");
        }
    }
}
