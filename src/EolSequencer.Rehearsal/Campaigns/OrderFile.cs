using System.Text;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>An order as the text of an order file, so that a run of a campaign can be run again by itself.</summary>
public static class OrderFile
{
    /// <summary>The text; loading it gives the order back.</summary>
    public static string TextOf(Order order)
    {
        var text = new StringBuilder("# An invented order of a rehearsal.\n");
        text.Append($"order: {order.Id}\nvin: {order.Vin}\nvehicle-type: {order.VehicleType}\noptions:\n");
        foreach (var (name, value) in order.Options) text.Append($"  {name}: {value}\n");
        text.Append(order.Facts.IsEmpty ? "" : "facts:\n");
        var open = "";
        foreach (var (name, value) in order.Facts)
        {
            if (name.IndexOf('[', StringComparison.Ordinal) is var at and > 0)
            {
                if (open != name[..at]) text.Append($"  {open = name[..at]}:\n");
                text.Append($"    {name[(at + 1)..^1]}: {Written(value)}\n");
            }
            else
            {
                text.Append($"  {name}: {Written(value)}\n");
            }
        }

        return text.ToString();
    }

    private static string Written(Value value) => value switch
    {
        TextValue text => $"\"{text.Text}\"",
        ListValue list => $"[{string.Join(", ", list.Items.Select(item => $"\"{item}\""))}]",
        _ => value.ToString()!,
    };
}
