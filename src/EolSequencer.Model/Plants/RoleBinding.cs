namespace EolSequencer.Model.Plants;

/// <summary>A device role of this station.</summary>
/// <param name="Instrument">The instrument behind it; null when none is named.</param>
public sealed record RoleBinding(string Role, AdapterBinding Adapter, Instrument? Instrument);
