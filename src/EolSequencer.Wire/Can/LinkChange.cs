namespace EolSequencer.Wire.Can;

/// <summary>The link of a participant went down or came back.</summary>
/// <param name="State">The state from now on.</param>
/// <param name="Stamp">When it changed.</param>
public readonly record struct LinkChange(LinkState State, long Stamp);
