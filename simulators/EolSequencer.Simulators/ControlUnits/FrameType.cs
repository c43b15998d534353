using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>Writes a frame's bytes from the state of the vehicle; see <see cref="Bus.PayloadWriter"/>.</summary>
internal delegate bool FrameWriter(Van van, TimeSpan now, Span<byte> payload);

/// <summary>A cyclic frame of eight bytes that a unit sends.</summary>
/// <param name="Id">11-bit identifier.</param>
/// <param name="CycleMs">Milliseconds between two of them.</param>
/// <param name="Write">What it holds.</param>
internal sealed record FrameType(uint Id, int CycleMs, FrameWriter Write);
