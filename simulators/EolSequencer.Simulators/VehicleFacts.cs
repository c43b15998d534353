using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Simulators;

/// <summary>What a simulated vehicle is built from: what its order says.</summary>
/// <param name="Vin">17 characters; what the plates and the label show.</param>
/// <param name="Options">Every option as a word; <c>yes</c> or <c>no</c> for truth values.</param>
/// <param name="Software">Software number by control unit; a unit that is not named has zeros.</param>
/// <param name="Parts">Part number by control unit; a unit that is not named has zeros.</param>
public sealed record VehicleFacts(
    string Vin, IReadOnlyDictionary<string, string> Options, IReadOnlyDictionary<string, string> Software, IReadOnlyDictionary<string, string> Parts)
{
    /// <summary>The facts of an order of the vehicle type orrin.</summary>
    public static VehicleFacts Of(Order order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var options = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, value) in order.Options) options[name] = Word(value);
        return new VehicleFacts(order.Vin.ToString(), options, Indexed(order, "software["), Indexed(order, "part["));
    }

    private static Dictionary<string, string> Indexed(Order order, string start)
    {
        var facts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, value) in order.Facts)
        {
            if (name.StartsWith(start, StringComparison.Ordinal)) facts[name[start.Length..^1]] = Word(value);
        }

        return facts;
    }

    private static string Word(Value value) => value is TruthValue truth ? truth.IsTrue ? "yes" : "no" : value.ToString()!;
}
