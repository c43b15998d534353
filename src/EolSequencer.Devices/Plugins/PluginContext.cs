using System.Reflection;
using System.Runtime.Loader;

namespace EolSequencer.Devices.Plugins;

/// <summary>
/// Where a plug-in's assemblies live: its own libraries come from its folder, whatever versions others use; this program's
/// rooms are those of the program, so that both mean the same types.
/// </summary>
internal sealed class PluginContext(string path) : AssemblyLoadContext(Path.GetFileNameWithoutExtension(path))
{
    private readonly AssemblyDependencyResolver _resolver = new(path);

    protected override Assembly? Load(AssemblyName name)
    {
        if (name.Name is "EolSequencer.Model" or "EolSequencer.Wire" or "EolSequencer.Devices") return null;
        return _resolver.ResolveAssemblyToPath(name) is { } found ? LoadFromAssemblyPath(found) : null;
    }

    protected override nint LoadUnmanagedDll(string unmanagedDllName) =>
        _resolver.ResolveUnmanagedDllToPath(unmanagedDllName) is { } found ? LoadUnmanagedDllFromPath(found) : 0;
}
