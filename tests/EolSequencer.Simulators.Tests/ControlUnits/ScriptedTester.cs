using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Simulators.Tests.ControlUnits;

/// <summary>A tester that sends what a test writes in hexadecimal digits and notes every message that comes back, with its time.</summary>
internal sealed class ScriptedTester : ICanListener
{
    private readonly VirtualTime _time;
    private readonly ICanPort _port;
    private readonly TransportAddress _address;
    private readonly MessageReceiver _receiver;
    private readonly MessageSender _sender;
    private readonly TransportOptions _options;
    private TaskCompletionSource<CanFrame>? _flow;
    private TaskCompletionSource<string>? _answer;
    private TimeSpan _firstFrame;

    public ScriptedTester(VirtualTime time, ICanPort port, uint request, uint response, TransportOptions? options = null)
    {
        (_time, _port) = (time, port);
        _options = options ?? new TransportOptions();
        _address = TransportAddress.Normal(CanId.Base(request), CanId.Base(response));
        _receiver = new MessageReceiver(_address, _options);
        _sender = new MessageSender(_address, _options);
        port.Listen(CanId.Base(response), this, Repeats.All);
    }

    /// <summary>Messages in the order of arrival, each with the end of its first frame and of its last.</summary>
    public List<(string Message, TimeSpan First, TimeSpan Last)> Heard { get; } = [];

    /// <summary>Sends a request and gives the last message that came within a time after it, or an empty text.</summary>
    public string Ask(string request, int withinMs = 200)
    {
        var before = Heard.Count;
        Send(request);
        _time.Advance(TimeSpan.FromMilliseconds(withinMs));
        return Heard.Count > before ? Heard[^1].Message : "";
    }

    /// <summary>Sends a request and waits until its last frame is out.</summary>
    public TimeSpan Send(string request) => _time.Run(() => SendAsync(request, default));

    /// <summary>Sends a request and gives the first message that is more than "response pending"; empty when cancelled before.</summary>
    public async Task<string> AskAsync(string request, CancellationToken cancel)
    {
        _answer = new TaskCompletionSource<string>();
        using var end = cancel.UnsafeRegister(_ => _answer.TrySetResult(""), null);
        try
        {
            await SendAsync(request, cancel);
        }
        catch (OperationCanceledException)
        {
            _sender.Reset();
        }

        return await _answer.Task;
    }

    private async Task<TimeSpan> SendAsync(string request, CancellationToken cancel)
    {
        var step = _sender.Begin(Convert.FromHexString(request.Replace(" ", "", StringComparison.Ordinal)));
        var sent = default(Transmission);
        while (step.Ended is null)
        {
            if (step.Frame is { } frame)
            {
                sent = await _port.SendAsync(frame, cancel);
                step = _sender.Confirm();
            }
            else
            {
                _flow = new TaskCompletionSource<CanFrame>();
                step = _sender.Accept(await _flow.Task.WaitAsync(cancel));
            }
        }

        return TimeSpan.FromTicks(sent.Stamp);
    }

    public void Received(in CanFrame frame, long stamp)
    {
        if (_address.IsFlowControl(frame))
        {
            _flow?.TrySetResult(frame);
            return;
        }

        if (!_receiver.IsReceiving) _firstFrame = TimeSpan.FromTicks(stamp);
        var step = _receiver.Accept(frame);
        if (step.Reply is { } reply) _ = _port.SendAsync(reply, default);
        if (step.Message.IsEmpty) return;
        var text = Convert.ToHexString(step.Message.Span);
        Heard.Add((text, _firstFrame, TimeSpan.FromTicks(stamp)));
        if (!text.EndsWith("78", StringComparison.Ordinal) || !text.StartsWith("7F", StringComparison.Ordinal)) _answer?.TrySetResult(text);
    }

    public void Silenced(CanId id, long lastStamp)
    {
    }
}
