namespace EolSequencer.Records.Parts;

/// <summary>A part with a serial that was found on a vehicle.</summary>
/// <param name="Vin">The number that the vehicle has by now.</param>
/// <param name="Part">What it is: <c>lock_unit</c>.</param>
/// <param name="At">Which of several on the vehicle; empty: the only one.</param>
/// <param name="Run">The run that found it.</param>
/// <param name="Step">Full id of the step that found it.</param>
/// <param name="Found">When, UTC.</param>
/// <param name="Replaced">True: a later one is in its place.</param>
public sealed record PartSerial(string Vin, string Part, string At, string Serial, string Run, string Step, DateTimeOffset Found, bool Replaced)
{
    /// <summary>Part and place together: <c>lock_unit[fl]</c>.</summary>
    public string Name => new Model.Vehicles.PartName(Part, At).ToString();
}
