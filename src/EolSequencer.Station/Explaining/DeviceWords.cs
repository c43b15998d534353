using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Station.Explaining;

/// <summary>Where readings come from and what acts: the device, its channel, and how that is obtained.</summary>
/// <param name="station">Says which instrument serves a role; null when no station was named.</param>
internal sealed class DeviceWords(CheckedSequence sequence, StationFile? station)
{
    /// <summary>Every device of the sequence.</summary>
    public ImmutableArray<ExplainedFact> All => [.. sequence.Roles.Select(role => new ExplainedFact(role.Role, Of(role)))];

    /// <summary>A channel with its source.</summary>
    public string Channel(ChannelUse use, Arguments arguments)
    {
        var index = use.Index?.Resolve(arguments);
        var role = sequence.Roles.First(one => one.Role == use.Role);
        var channel = role.Kind.Channels[use.Channel];
        var unit = channel.Shape.Unit is { } known ? $" in {known.Symbol}" : "";
        return $"{use.Resolve(arguments)}{unit}: {SourceWords.Of(channel, index) ?? Short(role)}";
    }

    /// <summary>What an action is done by.</summary>
    public string Action(string role, ActionDescription action, string? index) =>
        SourceWords.Of(action, index) ?? Short(sequence.Roles.First(one => one.Role == role));

    private string Short(DeviceRole role) => station?.Find(role.Role)?.Instrument is { } known ? $"{role.Kind.Id} {known.Id}" : $"a device of kind {role.Kind.Id}";

    private string Of(DeviceRole role)
    {
        if (station?.Find(role.Role) is not { } binding) return $"a device of kind {role.Kind.Id}";
        var instrument = binding.Instrument is { } known ? $", instrument {known.Id}{Due(known)}" : "";
        return $"{role.Kind.Id} by {binding.Adapter.Adapter}{instrument}";
    }

    private static string Due(Instrument instrument) =>
        instrument.CalibrationDue is { } due ? string.Create(CultureInfo.InvariantCulture, $", calibrated until {due:yyyy-MM-dd}") : "";
}
