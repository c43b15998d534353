using EolSequencer.Model.Devices;

namespace EolSequencer.Model.Ports;

/// <summary>
/// A device bound to a role. Every exchange has a time limit of its own, ends when it is cancelled, and says what was
/// sent and received when it fails; a late answer never reaches the next request. Trouble of the device or the link is
/// a reading without a value, never an exception. A vehicle's engine calls it from one thread.
/// </summary>
public interface IDevice : IAsyncDisposable
{
    /// <summary>The role it is bound to.</summary>
    string Role { get; }

    /// <summary>Identity of the instrument behind it; null for a vehicle bus.</summary>
    string? Instrument { get; }

    /// <summary>
    /// Asks the equipment what it is: an instrument for its identity, a bus for the control units that are there. The value is a
    /// text for people; nobody there is a missing reading. Changes nothing, and needs no test to be under way.
    /// </summary>
    ValueTask<Reading> IdentifyAsync(CancellationToken cancel);

    /// <summary>
    /// One value of a channel, taken at or after <see cref="ReadRequest.NotBefore"/>; for an <c>event</c> channel the
    /// next event after that moment.
    /// </summary>
    ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel);

    /// <summary>One reading of every index asked for, in that order; an <c>event</c> channel gives all of one event.</summary>
    ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel);

    /// <summary>
    /// Hands every new reading to the listener until the returned subscription is disposed: broadcast signals at each
    /// arrival (a repeat of the same bytes may be left out), polled channels every <paramref name="every"/>, a missing or stale value
    /// once when it becomes so.
    /// </summary>
    IDisposable Watch(ReadRequest request, TimeSpan every, IReadingListener listener);

    /// <summary>Does an action and waits for the device's confirmation.</summary>
    ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel);

    /// <summary>
    /// Whether the link that <paramref name="request"/> uses has carried an answer of somebody else after
    /// <paramref name="since"/>; asks once when nothing was seen. Tells a dead control unit from a dead bus.
    /// </summary>
    ValueTask<bool> OthersAnswerAsync(ReadRequest request, long since, CancellationToken cancel);
}

/// <summary>Which value is wanted.</summary>
/// <param name="Channel">A channel of the device kind.</param>
/// <param name="Index">The index; null when the channel has none or all are wanted.</param>
/// <param name="NotBefore">Timestamp of the injected clock before which nothing counts.</param>
public readonly record struct ReadRequest(ChannelDescription Channel, string? Index, long NotBefore)
{
    /// <summary>True: a watch hears of every arrival, those that repeat the bytes before included.</summary>
    public bool EveryArrival { get; init; }
}

/// <summary>What is to be done.</summary>
/// <param name="Index">Which one of an indexed action; null when it has no index.</param>
/// <param name="To">The value of <c>set … to</c>; null for <c>do</c>.</param>
/// <param name="With">The named values of <c>do … with</c>.</param>
public sealed record ActionRequest(ActionDescription Action, string? Index, Values.Value? To, IReadOnlyDictionary<string, Values.Value> With);

/// <summary>Takes readings as they come.</summary>
public interface IReadingListener
{
    /// <summary>A new reading; called on the run's thread.</summary>
    void Received(in Reading reading);
}
