using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Plants;

/// <summary>A place where the operator stands, and how it reads on a screen.</summary>
public sealed record PlantPlace(string Id, LocalText Text);
