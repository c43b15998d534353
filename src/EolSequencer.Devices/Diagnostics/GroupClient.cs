using System.Runtime.CompilerServices;
using EolSequencer.Devices.Transport;
using EolSequencer.Model.Waiting;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Diagnostics;

/// <summary>
/// Asks several control units at once; the first positive answer counts. It takes the turn of each of them first: a
/// unit that works on a request of its own has no ear for one to all.
/// </summary>
internal sealed class GroupClient : IDisposable
{
    private readonly IReadOnlyList<DiagnosticClient> _members;
    private readonly TransportChannel _channel;
    private readonly Exchange _exchange;
    private readonly Turnstile _turns = new();

    /// <param name="name">Who is asked, for people.</param>
    /// <param name="members">Those who may answer.</param>
    public GroupClient(string name, TransportLink link, TransportAddress address, IReadOnlyList<DiagnosticClient> members, DiagnosticTiming timing)
    {
        _members = members;
        _channel = new TransportChannel(link, address, listener: null);
        _exchange = new Exchange(name, _channel, link.Time, timing, () => members.Any(member => member.IsReceiving), isGroup: true);
    }

    /// <summary>Sends a request and waits for the first positive answer; without one, the first refusal counts.</summary>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    [AsyncMethodBuilder(typeof(PoolingAsyncValueTaskMethodBuilder<>))]
    public async ValueTask<ExchangeEnd> RequestAsync(ReadOnlyMemory<byte> request, CancellationToken cancel)
    {
        using var turn = await _turns.EnterAsync(cancel);
        var turns = new Turnstile.Turn[_members.Count];
        try
        {
            for (var at = 0; at < turns.Length; at++)
            {
                turns[at] = await _members[at].EnterAsync(cancel);
                _members[at].LendTo(_exchange);
            }

            return await _exchange.AskAsync(request, default, cancel);
        }
        finally
        {
            for (var at = 0; at < turns.Length; at++)
            {
                _members[at].LendTo(null);
                turns[at].Dispose();
            }
        }
    }

    public void Dispose()
    {
        _channel.Dispose();
        _exchange.Dispose();
    }
}
