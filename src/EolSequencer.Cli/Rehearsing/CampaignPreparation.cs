using System.Security.Cryptography;
using System.Text;
using EolSequencer.Cli.Commands;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Rehearsal.Campaigns;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Station.Running;
using Spectre.Console;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>Loads what a campaign needs, plans it, and opens its file; tells everything that is wrong.</summary>
internal sealed class CampaignPreparation(IAnsiConsole told, RehearseChoices choices)
{
    private readonly string _path = choices.Sequence!;

    /// <summary>The campaign; null: already told.</summary>
    public ReadyCampaign? Prepare()
    {
        var load = SequenceLoader.Load(_path, ExpressionsFolder.Open());
        DiagnosticLines.Write(told, load.Diagnostics.Where(one => one.Severity == Severity.Error));
        if (load is not { Sequence: { } sequence, Plant: { } plant }) return null;
        if (SequenceLoader.Plan(_path, ExpressionsFolder.Open()).Plan is not { } vehicles || Station(sequence) is not { } station) return null;

        var plan = CampaignPlan.Of(sequence, CampaignVehicle.All(sequence.VehicleType, vehicles), choices.Settings);
        if (plan.NotTried is [_, ..] left) told.WriteLine($"not tried, because '{sequence.Id}' uses no such instrument: {string.Join(", ", left.Select(point => $"{point.Name} ({point.Device})"))}");
        var into = choices.Into ?? Path.GetFileNameWithoutExtension(_path) + ".campaign";
        var head = HeadOf(sequence, plant, station, plan);
        var (file, why) = File.Exists(into) || Directory.Exists(into) ? CampaignFile.Open(into) : CampaignFile.Create(into, head, sequence, plan);
        why ??= file!.Head == head ? null : $"{into} is another campaign ({file.Head.Sequence} revision {file.Head.Revision}, {file.Head.Settings}, program {file.Head.Program}, or files that have changed since): name another file with --into";
        if (why is null) return new ReadyCampaign(plan, new CampaignRunner(sequence, plant, station), file!, into);

        file?.Dispose();
        Refusals.Document(told, why);
        return null;
    }

    private StationFile? Station(CheckedSequence sequence)
    {
        if (choices.Station is { } wanted)
        {
            var result = StationLoader.Load(wanted);
            var found = new List<Diagnostic>(result.Diagnostics);
            if (result.Station is { } at) found.AddRange(StationFit.Check(at, sequence));
            DiagnosticLines.Write(told, found);
            if (result.Station is { } named && found.TrueForAll(one => one.Severity != Severity.Error))
            {
                if (SimulatedStation.Serves(named)) return named;
                Refusals.Document(told, $"station '{named.Id}' has no simulated vehicle; a campaign never touches a real one");
            }

            return null;
        }

        var fitting = StationLoader.FilesIn(_path).Select(file => StationLoader.Load(file).Station).OfType<StationFile>()
            .FirstOrDefault(station => SimulatedStation.Serves(station) && StationFit.Check(station, sequence).Count == 0);
        if (fitting is null) Refusals.Document(told, $"the plant has no station of kind '{sequence.StationKind}' with simulated devices for '{sequence.Id}': name one with --station FILE");
        return fitting;
    }

    // What stands in the files decides, also where no expression is compiled of it.
    private static string SourcesOf(CheckedSequence sequence) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(string.Join(' ', sequence.Sources.Select(source => source.Hash).Order(StringComparer.Ordinal)))));

    private CampaignHead HeadOf(CheckedSequence sequence, Plant plant, StationFile station, CampaignPlan plan) => new(
        plant.Id, station.Id, sequence.Id, sequence.Revision, SourcesOf(sequence), (long?)sequence.CycleTime?.TotalMicroseconds, choices.Settings.Text, plan.Jobs.Count,
        VehicleRun.Program, $"eol run {_path} --station {station.Place.File}");
}
