namespace EolSequencer.Model.Plants;

/// <summary>The check of a station against a reference: a sequence with known values, due again and again.</summary>
/// <param name="Sequence">Id of the sequence; runs of it are checks and count for no vehicle.</param>
/// <param name="Reference">The number of the reference, which has an order as a vehicle has.</param>
/// <param name="IsDaily">True: due once a production day; false: once a shift, or a day where the plant has no shifts.</param>
public sealed record ShiftCheckRule(string Sequence, string Reference, bool IsDaily);
