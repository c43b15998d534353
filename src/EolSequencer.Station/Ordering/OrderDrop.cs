using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Ordering;

/// <summary>Takes the orders of a table, or one as a JSON file, over into a plant: a JSON file each, in the plant's folder <c>orders</c>.</summary>
public static class OrderDrop
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>
    /// Takes what is right, line by line; a line with an error changes nothing. A vehicle that has an order already keeps it unless
    /// it is to be replaced.
    /// </summary>
    /// <param name="table">The table (RFC 4180), or an order (its name ends with <c>.json</c>), as the user typed it.</param>
    /// <param name="plant">A file or folder of the plant.</param>
    /// <param name="replace">Whether an order that reads otherwise is replaced.</param>
    public static DropResult Take(string table, string plant, bool replace, ExpressionCache cache)
    {
        var read = table.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? One(table, plant, cache) : OrderTableLoader.Load(table, plant, cache);
        var result = new DropResult(read.Diagnostics);
        if (read.Orders.Count == 0) return result;
        var folder = Path.Combine(OrderLoader.PlantOf(plant)!, "orders");
        try
        {
            Directory.CreateDirectory(folder);
            var there = OrderLoader.FilesByNumberAndVin(plant);
            foreach (var order in read.Orders) Take(order, folder, there, replace, cache, result);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            result.Fault = $"{folder} cannot be written: {fault.Message}";
        }

        return result;
    }

    private static OrderTable One(string file, string plant, ExpressionCache cache)
    {
        var read = OrderLoader.LoadDropped(file, plant, cache);
        return new OrderTable(read.Order is { } order ? [order] : [], read.Diagnostics);
    }

    private static void Take(Order order, string folder, ILookup<string, string> there, bool replace, ExpressionCache cache, DropResult result)
    {
        var path = Path.Combine(folder, order.Id.Replace('/', '_') + ".json");
        var text = JsonOf(order);
        var others = there[order.Id].Concat(there[order.Vin.Text]).Distinct().ToList();
        if (others is [var existing, ..])
        {
            if (IsSame(existing, order, cache))
            {
                result.Same.Add(order);
                return;
            }

            if (!replace || others.Count > 1)
            {
                result.Kept.Add((order, existing));
                return;
            }

            path = existing.EndsWith(".json", StringComparison.Ordinal) ? existing : path;
            if (path != existing) File.Delete(existing);
        }

        // Whole or not at all: a station may be reading.
        var temporary = path + ".new";
        File.WriteAllText(temporary, text, new UTF8Encoding(false));
        File.Move(temporary, path, overwrite: true);
        result.Taken.Add(order);
    }

    private static bool IsSame(string path, Order order, ExpressionCache cache) =>
        OrderLoader.Load(path, cache).Order is { } there && JsonOf(there) == JsonOf(order);

    private static string JsonOf(Order order)
    {
        var options = new JsonObject(order.Options.Select(option => KeyValuePair.Create(option.Key, ValueOf(option.Value))));
        var facts = new JsonObject();
        foreach (var (name, value) in order.Facts)
        {
            if (name.Split('[', 2) is [var fact, var index])
            {
                if (facts[fact] is not JsonObject inner) facts[fact] = inner = [];
                inner[index.TrimEnd(']')] = ValueOf(value);
            }
            else
            {
                facts[name] = ValueOf(value);
            }
        }

        var root = new JsonObject { ["order"] = order.Id, ["vin"] = order.Vin.Text, ["vehicle-type"] = order.VehicleType, ["options"] = options, ["facts"] = facts };
        return root.ToJsonString(Readable) + "\n";
    }

    private static JsonNode? ValueOf(Value value) => value switch
    {
        TruthValue truth => JsonValue.Create(truth.ToString() == "yes"),
        NumberValue { Unit: null } number => JsonValue.Create(number.Number),
        _ => JsonValue.Create(value.ToString()),
    };
}

/// <summary>What came of a table of orders.</summary>
/// <param name="Diagnostics">What is wrong with its lines.</param>
public sealed record DropResult(IReadOnlyList<Diagnostic> Diagnostics)
{
    /// <summary>New or replaced.</summary>
    public List<Order> Taken { get; } = [];

    /// <summary>Already there, word for word.</summary>
    public List<Order> Same { get; } = [];

    /// <summary>There is another order, which was kept; with its file.</summary>
    public List<(Order Order, string File)> Kept { get; } = [];

    /// <summary>Why files could not be written; null when they could.</summary>
    public string? Fault { get; set; }
}
