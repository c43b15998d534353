using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests.Bus;

/// <summary>A listener that writes down what it is told.</summary>
internal sealed class HeardFrames : ICanListener
{
    public List<(string Frame, TimeSpan At)> Frames { get; } = [];

    public List<(CanId Id, TimeSpan Last)> Silences { get; } = [];

    public void Received(in CanFrame frame, long stamp) => Frames.Add((frame.ToString(), TimeSpan.FromTicks(stamp)));

    public void Silenced(CanId id, long lastStamp) => Silences.Add((id, TimeSpan.FromTicks(lastStamp)));
}
