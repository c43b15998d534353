using System.Threading.Tasks.Sources;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Bus;

/// <summary>A frame that waits for the bus or is on it. The objects go round: a bus carries many thousands of frames.</summary>
internal sealed class PendingFrame : IValueTaskSource<Transmission>
{
    private static readonly Action<object?, CancellationToken> Withdraw = static (self, cancel) => ((PendingFrame)self!).Cancel(cancel);

    private ManualResetValueTaskSourceCore<Transmission> _result;
    private CancellationTokenRegistration _cancellation;
    private BusPort _port = null!;
    private IFrameOwner? _owner;
    private int _what;
    private bool _isAwaited;

    public CanFrame Frame { get; private set; }

    public BusPort Port => _port;

    /// <summary>Order of precedence on the bus: the lower number wins.</summary>
    public ulong Precedence { get; private set; }

    public bool Belongs(IFrameOwner owner) => ReferenceEquals(_owner, owner);

    public void BeginFor(BusPort port, in CanFrame frame, IFrameOwner? owner, int what)
    {
        (_port, Frame, _owner, _what) = (port, frame, owner, what);
        Precedence = PrecedenceOf(frame.Id);
    }

    public ValueTask<Transmission> BeginAwaited(BusPort port, in CanFrame frame, CancellationToken cancel)
    {
        BeginFor(port, frame, owner: null, what: 0);
        _isAwaited = true;
        _cancellation = cancel.UnsafeRegister(Withdraw, this);
        return new ValueTask<Transmission>(this, _result.Version);
    }

    /// <summary>Tells whoever sent it how it ended.</summary>
    public void End(Transmission how)
    {
        if (_isAwaited)
        {
            _isAwaited = false;
            _cancellation.Dispose();
            _result.SetResult(how);
            return;
        }

        var (owner, what) = (_owner, _what);
        Recycle();
        if (how.IsConfirmed) owner?.Sent(what);
    }

    public Transmission GetResult(short token)
    {
        try
        {
            return _result.GetResult(token);
        }
        finally
        {
            _result.Reset();
            Recycle();
        }
    }

    public ValueTaskSourceStatus GetStatus(short token) => _result.GetStatus(token);

    public void OnCompleted(Action<object?> continuation, object? state, short token, ValueTaskSourceOnCompletedFlags flags) =>
        _result.OnCompleted(continuation, state, token, flags);

    private void Cancel(CancellationToken cancel)
    {
        if (!_isAwaited) return;
        _isAwaited = false;

        // On the wire it goes out all the same, in a shell of its own, since this one returns to the sender now.
        _port.Withdraw(this);
        _result.SetException(new OperationCanceledException(cancel));
    }

    private void Recycle()
    {
        var port = _port;
        (_port, _owner, Frame, _cancellation) = (null!, null, default, default);
        port.Bus.Return(this);
    }

    // Arbitration compares bit by bit (ISO 11898-1): eleven bits of identifier, then a base frame (IDE 0) wins over
    // an extended one with the same first eleven, then the other eighteen bits.
    private static ulong PrecedenceOf(CanId id) =>
        id.IsExtended ? ((ulong)(id.Value >> 18) << 19) | (1UL << 18) | (id.Value & 0x3FFFF) : (ulong)id.Value << 19;
}
