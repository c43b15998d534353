using System.Collections.Immutable;
using EolSequencer.Records.Administration;
using EolSequencer.Records.People;

namespace EolSequencer.Records.Release;

/// <summary>Releases vehicles. What speaks against it is looked at in the same turn in which it is signed, so nothing can come between.</summary>
public sealed class ReleaseService
{
    private const int MostShown = 8;

    private readonly Desk _desk;

    internal ReleaseService(Desk desk) => _desk = desk;

    /// <summary>Signs that a vehicle may leave.</summary>
    /// <param name="route">The station kinds that it must pass, by its plant.</param>
    public Outcome<Readiness> Sign(SignedIn by, string vin, ImmutableArray<string> route) => _desk.Change<Readiness>("release", by, [Role.Quality], TextRules.Vin(vin), turn =>
    {
        var ready = Readiness.Of(turn, vin, route);
        if (!ready.IsReady)
        {
            var more = ready.Against.Length > MostShown ? $"; and {ready.Against.Length - MostShown} more" : "";
            return Refused.AgainstRule($"{vin} cannot be released: {string.Join("; ", ready.Against.Take(MostShown))}{more}");
        }

        if (turn.Releases.Find(vin) is { State: ReleaseRow.IsReleased } released && released.Runs.SequenceEqual(ready.Runs)) return Refused.AgainstRule($"{vin} is released already, by {released.By}");
        turn.Append(new ReleaseSigned(vin, route, ready.Runs), by.Badge);
        return Readiness.Of(turn, vin, route);
    });
}
