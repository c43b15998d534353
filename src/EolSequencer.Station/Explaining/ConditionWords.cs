using System.Text.RegularExpressions;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Explaining;

/// <summary>A condition as its author wrote it, and behind it what the names in it stand for on this vehicle.</summary>
internal static partial class ConditionWords
{
    public static string Of(Expression condition, Order order, Arguments arguments)
    {
        var here = Here(condition.Text, order, arguments);
        return here.Length == 0 ? condition.Text : $"{condition.Text}  (here {here})";
    }

    /// <summary>What the options and loop names in a text are on this vehicle; empty when it names none.</summary>
    public static string Here(string text, Order order, Arguments arguments)
    {
        var code = Quoted().Replace(text, "\"\"");
        var options = Option().Matches(code)
            .Select(match => match.Groups[1].Value)
            .Where(order.Options.ContainsKey)
            .Select(name => $"vehicle.{name} is {order.Options[name]}");
        var names = Name().Matches(code)
            .Select(match => match.Value)
            .Select(name => (Name: name, Value: arguments.Find(name)))
            .Where(one => one.Value is not null)
            .Select(one => $"{one.Name} is {one.Value}");
        return string.Join(", ", options.Concat(names).Distinct());
    }

    [GeneratedRegex("\"[^\"]*\"")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\bvehicle\.(\w+)")]
    private static partial Regex Option();

    [GeneratedRegex(@"(?<![\w.])[A-Za-z_]\w*(?![\w(.])")]
    private static partial Regex Name();
}
