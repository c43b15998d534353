using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using EolSequencer.Language.Expressions.Support;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions;

/// <summary>Brings compiled expressions into the process. They go when the last of their functions goes.</summary>
internal static class UnitLoader
{
    // A unit that somebody still uses serves a second load as well: its functions have been turned into machine code.
    private static readonly ConcurrentDictionary<string, WeakReference<ExpressionUnit>> InUse = new(StringComparer.Ordinal);

    /// <summary>The functions of a unit, by number.</summary>
    public static IReadOnlyList<Func<ExpressionScope, Value>> Load(CompiledUnit unit)
    {
        if (InUse.TryGetValue(unit.Hash, out var known) && known.TryGetTarget(out var loaded)) return loaded.All();

        var fresh = LoadAnew(unit);
        foreach (var (hash, used) in InUse)
        {
            if (!used.TryGetTarget(out _)) InUse.TryRemove(hash, out _);
        }

        InUse[unit.Hash] = new WeakReference<ExpressionUnit>(fresh);
        return fresh.All();
    }

    private static ExpressionUnit LoadAnew(CompiledUnit unit)
    {
        var context = new UnitContext();
        using var code = new MemoryStream(unit.Code, writable: false);
        using var symbols = new MemoryStream(unit.Symbols, writable: false);
        var assembly = context.LoadFromStream(code, symbols);
        var functions = (ExpressionUnit)Activator.CreateInstance(assembly.GetType(ExpressionUnit.TypeName, throwOnError: true)!)!;

        // A class that has been set up before costs compiled code no question at every call.
        RuntimeHelpers.RunClassConstructor(typeof(TruthValue).TypeHandle);

        // Unloading waits for everything that still refers to the code; asking now means that nobody has to remember it.
        context.Unload();
        return functions;
    }
}
