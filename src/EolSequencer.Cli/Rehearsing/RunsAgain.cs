using System.Globalization;
using EolSequencer.Cli.Output;
using EolSequencer.Rehearsal.Campaigns;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>The commands that show single runs of a campaign again, and the orders they want, in a folder beside its file.</summary>
/// <param name="campaign">The campaign's file.</param>
/// <param name="command">What all the commands begin with.</param>
internal sealed class RunsAgain(string campaign, string command)
{
    private readonly HashSet<int> _vehicles = [];
    private readonly string _folder = campaign + ".orders";

    public string Campaign => campaign;

    /// <summary>The command for a run; its order is among those that are written.</summary>
    public string CommandFor(RunKey run)
    {
        _vehicles.Add(run.Vehicle);
        var faults = run.Faults.Length == 0 ? "" : $" --inject {run.Faults}";
        return string.Create(CultureInfo.InvariantCulture, $"{command} --order {PathOf(run.Vehicle)} --seed {run.Seed}{faults}");
    }

    /// <summary>Writes the orders of all runs that were asked for.</summary>
    /// <returns>Why they could not be written; null when they were.</returns>
    public string? WriteOrders(CampaignFile file)
    {
        if (_vehicles.Count == 0) return null;
        try
        {
            Directory.CreateDirectory(_folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return $"{_folder} cannot be made: {fault.Message}";
        }

        return _vehicles.Order().Select(vehicle => TextFile.TryWrite(PathOf(vehicle), file.OrderOf(vehicle))).FirstOrDefault(why => why is not null);
    }

    private string PathOf(int vehicle) => Path.Combine(_folder, vehicle.ToString("000000", CultureInfo.InvariantCulture) + ".yaml");
}
