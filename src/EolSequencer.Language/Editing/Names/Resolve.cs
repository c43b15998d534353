using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Editing.Names;

/// <summary>Follows names.</summary>
internal static class Resolve
{
    /// <summary>What a path leads to; null when a name on the way means nothing.</summary>
    public static Thing? Follow(IEnumerable<Thing> roots, IEnumerable<string> path)
    {
        Thing? at = null;
        foreach (var name in path)
        {
            at = (at is null ? roots : at.Parts()).FirstOrDefault(thing => thing.Name == name);
            if (at is null) return null;
        }

        return at;
    }

    /// <summary>True when a text about this is one name as a whole, which may hold hyphens.</summary>
    public static bool IsWholeName(Subject subject) =>
        subject is Subject.Fragment or Subject.Station or Subject.Sequence or Subject.Order or Subject.OperatorScript or Subject.VehicleType or Subject.DeviceKind or Subject.StationKind or Subject.Place or Subject.Unit or Subject.ControlUnit;
}
