using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Wire.Tests.IsoTp;

/// <summary>The addresses of the transport tests: tester 7E0 to control unit 7E8 unless a test says otherwise.</summary>
internal static class Side
{
    public static TransportAddress Tester { get; } = TransportAddress.Normal(CanId.Base(0x7E0), CanId.Base(0x7E8));

    public static TransportAddress Unit { get; } = Tester.Reversed();

    public static TransportAddress Group { get; } = TransportAddress.Functional(new Route(CanId.Base(0x7DF)));

    public static TransportOptions Unpadded { get; } = new() { Padding = null };

    public static TransportOptions Fd { get; } = new() { IsFd = true, TransmitLength = 64 };
}
