using System.Text;
using EolSequencer.Devices.Can;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.Can;

/// <summary>A port on a serial line whose interface answers as the test says, in virtual time.</summary>
internal sealed class SerialCanBench
{
    public SerialCanBench(bool answers = true)
    {
        Form = new SerialCanForm(500_000, answers);
        Line = new FakeLine(Time) { Arrived = bytes => Answer(Encoding.Latin1.GetString(bytes)) };
    }

    public VirtualTime Time { get; } = new(DateTimeOffset.UnixEpoch);

    public SerialCanForm Form { get; }

    public FakeLine Line { get; }

    public SerialCanPort Port { get; private set; } = null!;

    public List<string> Notes { get; } = [];

    /// <summary>Frames that came, as text.</summary>
    public List<string> Heard { get; } = [];

    /// <summary>What the interface says to a line; null: nothing.</summary>
    public Func<string, string?> Says { get; set; } = Well;

    /// <summary>An interface that does whatever it is told.</summary>
    public static string? Well(string line) => line switch
    {
        ['t', ..] => "z\r",
        ['T', ..] => "Z\r",
        _ => "\r",
    };

    public string? Open()
    {
        var (port, fault) = Time.Run(() => SerialCanPort.OpenAsync(Line.OpenFor, Time, Form, Notes.Add, default).AsTask());
        Port = port!;
        return fault;
    }

    public void Hear(string id) => Port.Listen(CanFrame.Parse(id + "#").Id, new Ear(Heard), Repeats.All);

    public Transmission? Send(string frame, double withinMs = 1000) => Time.Run(async () =>
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromMilliseconds(withinMs), Time);
        try
        {
            return (Transmission?)await Port.SendAsync(CanFrame.Parse(frame), limit.Token);
        }
        catch (OperationCanceledException)
        {
            return null;
        }
    });

    public void Give(string text, double passMs = 5)
    {
        Line.Give(text);
        Time.Advance(TimeSpan.FromMilliseconds(passMs));
    }

    private void Answer(string sent)
    {
        foreach (var line in sent.Split('\r')[..^1])
        {
            if (Says(line) is { } answer) Line.Give(answer);
        }
    }

    private sealed class Ear(List<string> heard) : ICanListener
    {
        public void Received(in CanFrame frame, long stamp) => heard.Add(frame.ToString());

        public void Silenced(CanId id, long lastStamp) => heard.Add("silence");
    }
}
