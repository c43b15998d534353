using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;

namespace EolSequencer.Records.Tests.Samples;

/// <summary>Compares by what values hold; records with lists in them compare by reference there.</summary>
internal static class Structural
{
    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> Parts = [];

    public static bool AreEqual(object? first, object? second)
    {
        if (first is null || second is null) return first is null && second is null;
        if (first.GetType() != second.GetType()) return false;
        if (first is string || first.GetType().IsPrimitive || first is decimal || first is Model.Units.Unit) return first.Equals(second);
        if (first is IEnumerable one && second is IEnumerable other) return AreEqual(one, other);
        var parts = Parts.GetOrAdd(first.GetType(), static type => [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(part => part.GetIndexParameters().Length == 0)]);
        return parts.Length == 0 || first is ValueType and IComparable
            ? first.Equals(second)
            : parts.All(part => AreEqual(part.GetValue(first), part.GetValue(second)));
    }

    private static bool AreEqual(IEnumerable first, IEnumerable second)
    {
        var one = first.Cast<object?>().ToArray();
        var other = second.Cast<object?>().ToArray();
        return one.Length == other.Length && one.Zip(other).All(pair => AreEqual(pair.First, pair.Second));
    }
}
