using System.CommandLine;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Judging;
using EolSequencer.Station.Ordering;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary><c>eol orders</c>: takes the orders of a table over into a plant.</summary>
internal static class OrdersCommand
{
    public static Command Make(IAnsiConsole console)
    {
        var table = new Argument<string>("TABLE") { Description = "An order as a JSON file (its name ends with .json), or a table (CSV): order, vin, vehicle-type, options by name, facts as order.FACT or order.FACT[INDEX]." };
        var plant = new Option<string>("--plant") { Description = "A file or folder of the plant.", HelpName = "FOLDER", Required = true };
        var replace = new Option<bool>("--replace") { Description = "Replaces an order that the plant has and that reads otherwise; without it, that one is kept." };
        var json = JsonOption.Make();
        var command = new Command("orders", "Takes an order, or the orders of a table line by line, over into a plant; ends with 2 when a line was not taken.") { table, plant, replace, json };
        command.SetAction(parsed => Take(
            console, OrderDrop.Take(parsed.GetRequiredValue(table), parsed.GetRequiredValue(plant), parsed.GetValue(replace), ExpressionsFolder.Open()), parsed.GetValue(json)));
        return command;
    }

    private static int Take(IAnsiConsole console, DropResult result, bool asJson)
    {
        if (asJson)
        {
            JsonOutput.Write(console, new
            {
                taken = result.Taken.Select(order => order.Id),
                same = result.Same.Select(order => order.Id),
                kept = result.Kept.Select(kept => new { order = kept.Order.Id, file = kept.File }),
                fault = result.Fault,
                diagnostics = result.Diagnostics.Select(DiagnosticLines.AsJson),
            });
        }
        else
        {
            DiagnosticLines.Write(console, result.Diagnostics);
            foreach (var (order, file) in result.Kept) console.MarkupLineInterpolated($"[yellow]kept[/] {file}: order {order.Id} in the table reads otherwise; --replace takes it");
            console.WriteLine($"{Words.Count(result.Taken.Count, "order")} taken, {result.Same.Count} there already, {result.Kept.Count} kept as they are");
        }

        if (result.Fault is { } fault) return Refusals.Equipment(asJson ? ErrorConsole.Make() : console, fault);
        return result.Kept.Count > 0 || result.Diagnostics.Any(one => one.Severity == Severity.Error) ? ExitCode.Document : ExitCode.Pass;
    }
}
