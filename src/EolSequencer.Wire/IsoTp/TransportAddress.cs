using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.IsoTp;

/// <summary>How one side of a connection addresses the other, and is addressed by it.</summary>
/// <remarks>
/// A functional address reaches a group and carries single frames only; what members answer comes over their own
/// physical addresses. Source: ISO 15765-2, addressing formats.
/// </remarks>
public sealed record TransportAddress
{
    private TransportAddress(Route transmit, Route receive, bool isFunctional) =>
        (Transmit, Receive, IsFunctional) = (transmit, receive, isFunctional);

    /// <summary>What this side puts on its frames.</summary>
    public Route Transmit { get; }

    /// <summary>What the frames for this side carry.</summary>
    public Route Receive { get; }

    /// <summary>True for a group of control units.</summary>
    public bool IsFunctional { get; }

    /// <summary>Normal addressing: the identifiers alone say it.</summary>
    public static TransportAddress Normal(CanId transmit, CanId receive) =>
        new(new Route(transmit), new Route(receive), isFunctional: false);

    /// <summary>Extended addressing: the first byte names the target, so it differs by direction.</summary>
    /// <param name="transmit">Identifier of this side's frames.</param>
    /// <param name="target">Address of the other side.</param>
    /// <param name="receive">Identifier of the other side's frames.</param>
    /// <param name="own">Address of this side.</param>
    public static TransportAddress Extended(CanId transmit, byte target, CanId receive, byte own) =>
        new(new Route(transmit, target), new Route(receive, own), isFunctional: false);

    /// <summary>Mixed addressing: the first byte is an extension, the same in both directions.</summary>
    public static TransportAddress Mixed(CanId transmit, CanId receive, byte extension) =>
        new(new Route(transmit, extension), new Route(receive, extension), isFunctional: false);

    /// <summary>Normal fixed addressing: 29-bit identifiers made of both addresses.</summary>
    public static TransportAddress NormalFixed(byte target, byte own) =>
        new(Route.NormalFixed(target, own), Route.NormalFixed(own, target), isFunctional: false);

    /// <summary>Mixed addressing with 29-bit identifiers made of both addresses.</summary>
    public static TransportAddress MixedFixed(byte target, byte own, byte extension) =>
        new(Route.MixedFixed(target, own, extension), Route.MixedFixed(own, target, extension), isFunctional: false);

    /// <summary>A group: a tester sends on this route, a control unit receives on the same one.</summary>
    public static TransportAddress Functional(Route route) => new(route, route, isFunctional: true);

    /// <summary>The same connection as the other side sees it.</summary>
    public TransportAddress Reversed() => new(Receive, Transmit, IsFunctional);

    /// <summary>
    /// Whether a frame for this side is a flow control and so the business of its <see cref="MessageSender"/>; every
    /// other frame is that of its <see cref="MessageReceiver"/>.
    /// </summary>
    public bool IsFlowControl(in CanFrame frame) =>
        Receive.Takes(frame) &&
        frame.Data.Length > Receive.PrefixLength &&
        Pci.KindOf(frame.Data.Span[Receive.PrefixLength]) == PciKind.FlowControl;
}
