namespace EolSequencer.Model.Plants;

/// <summary>A measuring instrument by its inventory number.</summary>
/// <param name="CalibrationDue">The last day of its calibration; null when the station file does not say.</param>
public sealed record Instrument(string Id, DateOnly? CalibrationDue);
