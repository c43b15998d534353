using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Cli.Probing;

/// <summary>The open devices of a session, and what their channels and actions are called.</summary>
internal sealed class ProbeBench(CheckedSequence sequence, Order order, IReadOnlyDictionary<string, IDevice> devices, TimeProvider time)
{
    public ImmutableArray<DeviceRole> Roles => sequence.Roles;

    public TimeProvider Time => time;

    public IDevice Device(string role) => devices[role];

    /// <summary>The index values that this vehicle has.</summary>
    public ImmutableArray<string> Fitted(ImmutableArray<IndexValue> indexes) => [.. indexes.Where(index => Has(index.When)).Select(index => index.Value)];

    /// <summary>Whether this vehicle has what stands under a condition.</summary>
    public bool Has(Expression? when) => when is null || OrderScope.IsTrue(when, order);

    /// <summary>A channel by its name: <c>bus.door_ajar[rear]</c>, or <c>door_ajar</c> where only one device has it; without an index every value.</summary>
    /// <exception cref="ProbeTrouble">There is none; the message names the nearest.</exception>
    public ChannelFound Channel(string text)
    {
        var (role, channel, index) = Find(text, kind => kind.Channels, "channel");
        if (index is not null) RequireIndex(text, channel.Indexes, index);
        return new ChannelFound(role, channel, channel.Indexes.IsEmpty ? [null] : index is not null ? [index] : [.. Fitted(channel.Indexes)]);
    }

    /// <summary>An action by its name, with the index it must have.</summary>
    /// <exception cref="ProbeTrouble">There is none; the message names the nearest.</exception>
    public (string Role, ActionDescription Action, string? Index) Action(string text)
    {
        var (role, action, index) = Find(text, kind => kind.Actions, "action");
        if (index is null && !action.Indexes.IsEmpty) throw new ProbeTrouble($"{role}.{action.Name} has an index: write one of {Listed(role, action.Name, action.Indexes)}");
        if (index is not null) RequireIndex(text, action.Indexes, index);
        return (role, action, index);
    }

    private (string Role, T Found, string? Index) Find<T>(string text, Func<DeviceKind, IReadOnlyDictionary<string, T>> parts, string what)
    {
        var (name, index) = Split(text);
        var all = Roles.SelectMany(role => parts(role.Kind).Select(part => (Role: role.Role, Name: part.Key, Part: part.Value))).ToList();
        var found = all.Where(one => name == $"{one.Role}.{one.Name}" || name == one.Name).ToList();
        if (found.Count == 1) return (found[0].Role, found[0].Part, index);
        if (found.Count > 1) throw new ProbeTrouble($"several devices have a {what} '{name}': {string.Join(", ", found.Select(one => $"{one.Role}.{one.Name}"))}");
        var near = Nearest.Of(name, all.Select(one => $"{one.Role}.{one.Name}")) ?? Nearest.Of(name, all.Select(one => one.Name));
        throw new ProbeTrouble($"there is no {what} '{name}'{(near is null ? "; 'list' shows all" : $"; did you mean {near}?")}");
    }

    private void RequireIndex(string text, ImmutableArray<IndexValue> indexes, string index)
    {
        if (indexes.IsEmpty) throw new ProbeTrouble($"'{text}': it has no index");
        if (indexes.Any(one => one.Value == index)) return;
        var near = Nearest.Of(index, indexes.Select(one => one.Value));
        throw new ProbeTrouble($"'{text}': there is no index '{index}'{(near is null ? $"; there are {string.Join(", ", Fitted(indexes))}" : $"; did you mean {near}?")}");
    }

    private string Listed(string role, string name, ImmutableArray<IndexValue> indexes) =>
        string.Join(", ", Fitted(indexes).Select(index => ChannelUse.NameOf(role, name, index)));

    private static (string Name, string? Index) Split(string text)
    {
        var open = text.IndexOf('[', StringComparison.Ordinal);
        if (open < 0) return (text, null);
        if (!text.EndsWith(']')) throw new ProbeTrouble($"'{text}': the bracket is never closed");
        return (text[..open], text[(open + 1)..^1].Trim().Trim('"'));
    }
}

/// <summary>A channel and the values of it that are meant.</summary>
/// <param name="Indexes">One entry for each value; null where the channel has no index.</param>
internal sealed record ChannelFound(string Role, ChannelDescription Channel, ImmutableArray<string?> Indexes)
{
    public string NameOf(string? index) => ChannelUse.NameOf(Role, Channel.Name, index);
}

/// <summary>Something typed cannot be done; the message is what is shown.</summary>
internal sealed class ProbeTrouble(string message) : Exception(message);
