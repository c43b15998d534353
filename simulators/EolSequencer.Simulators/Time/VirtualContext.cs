namespace EolSequencer.Simulators.Time;

/// <summary>Brings continuations back into the one thread of a <see cref="VirtualTime"/>.</summary>
internal sealed class VirtualContext(VirtualTime time) : SynchronizationContext
{
    public override void Post(SendOrPostCallback d, object? state) => time.Post(d, state);

    public override void Send(SendOrPostCallback d, object? state) => d(state);

    public override SynchronizationContext CreateCopy() => this;
}
