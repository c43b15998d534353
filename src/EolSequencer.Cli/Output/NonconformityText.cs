using System.Collections.Immutable;
using EolSequencer.Records.Nonconformities;
using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>Nonconformities for people.</summary>
internal static class NonconformityText
{
    /// <summary>What was done, and the same as an object for programs.</summary>
    public static (string Line, object Json) Tell(Nonconformity one) => ($"{one.Id} of {one.Vin} ({one.Code}) is {one.State}", one);

    public static void Write(IAnsiConsole console, ImmutableArray<Nonconformity> found)
    {
        if (found.IsEmpty)
        {
            console.WriteLine("nothing is open");
            return;
        }

        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("id", "vehicle", "what", "state", "found", "expected", "where");
        foreach (var one in found)
        {
            var value = one.Value is null ? one.Note ?? "" : one.Unit is null ? one.Value : $"{one.Value} {one.Unit}";
            table.AddRow(
                new Text(one.Id), new Text(one.Vin), new Text(one.Code), new Text(one.State), new Text(value), new Text(one.Window ?? ""),
                new Text(string.Join(", ", new[] { one.Place, one.Step is null ? null : $"{one.Step} in {one.Run}" }.OfType<string>())));
        }

        console.Write(table);
    }
}
