namespace EolSequencer.Language.Binding.Reach;

/// <summary>
/// The vehicles to which something applies. Where a condition asks for what is not known at load (a text of the order)
/// both answers are kept, so that a proof never rests on a guess.
/// </summary>
/// <param name="Surely">Those to which it applies whatever else is ordered.</param>
/// <param name="Maybe">Those to which it can apply; holds <paramref name="Surely"/>.</param>
internal sealed record Reached(VehicleSet Surely, VehicleSet Maybe)
{
    public Reached And(Reached other) => new(Surely.And(other.Surely), Maybe.And(other.Maybe));

    public Reached Or(Reached other) => new(Surely.Or(other.Surely), Maybe.Or(other.Maybe));

    /// <summary>Those to which this applies and the other does not.</summary>
    public Reached Without(Reached other) => new(Surely.Without(other.Maybe), Maybe.Without(other.Surely));
}
