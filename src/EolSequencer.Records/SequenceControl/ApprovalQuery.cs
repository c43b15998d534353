namespace EolSequencer.Records.SequenceControl;

/// <summary>A vehicle at a station, for which an approval is looked for.</summary>
/// <param name="Station">Id of the station.</param>
/// <param name="Moment">UTC; what comes into force later does not count.</param>
public sealed record ApprovalQuery(string VehicleType, string StationKind, string Station, string Vin, DateTimeOffset Moment);
