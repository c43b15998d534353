using System.Collections.Immutable;
using EolSequencer.Model.Plants;
using EolSequencer.Records.Administration;
using EolSequencer.Records.People;

namespace EolSequencer.Records.Nonconformities;

/// <summary>What people do about nonconformities. What runs say about them is written with the end of each run.</summary>
public sealed class NonconformityService
{
    /// <summary>The most parts that one repair fits.</summary>
    public const int MostParts = 50;

    private readonly Desk _desk;

    internal NonconformityService(Desk desk) => _desk = desk;

    /// <summary>Opens one that a person saw.</summary>
    /// <param name="code">What it is, by the plant's catalogue.</param>
    /// <param name="place">Where on the vehicle; null: not said.</param>
    /// <param name="catalogue">What the plant lets people name; empty: the plant is not known, or has no catalogue.</param>
    public Outcome<Nonconformity> Open(SignedIn by, string vin, string code, string? place, string note, ImmutableArray<CatalogueCode> catalogue = default)
    {
        var fault = TextRules.Vin(vin) ?? TextRules.Id("code", code) ?? (place is null ? null : TextRules.Name("place", place)) ?? TextRules.Text("note", note) ?? CatalogueFault(catalogue.IsDefault ? [] : catalogue, code, place);
        return _desk.Change<Nonconformity>("open a nonconformity", by, [Role.Operator, Role.Repairer, Role.Engineer, Role.Quality], fault, turn =>
        {
            if (turn.Corrections.Find(vin)?.Corrected is { } right) return Refused.AgainstRule($"{vin} was corrected to {right}; open it for that number");
            var id = RunFindings.IdOf(turn.Nonconformities.Count + 1);
            return Done(turn, id, new NonconformityOpened(id, vin, code, null, place, note), by);
        });
    }

    /// <summary>Says what was done to make it conform again; a retest, or an inspection, shows whether it does.</summary>
    public Outcome<Nonconformity> Rework(SignedIn by, string id, string what, ImmutableArray<FittedPart> parts) => Repair(by, id, NonconformityFold.Rework, what, parts);

    /// <summary>Says what was done to make it fit for use without conforming; beside the retest it wants a concession.</summary>
    public Outcome<Nonconformity> Repair(SignedIn by, string id, string what, ImmutableArray<FittedPart> parts) => Repair(by, id, NonconformityFold.Repair, what, parts);

    /// <summary>Says what was found by looking, where no step looks; by somebody else than who reworked or repaired it.</summary>
    public Outcome<Nonconformity> Inspect(SignedIn by, string id, bool passed, string note) => Change("inspect", by, [Role.Engineer, Role.Quality], id, TextRules.Text("note", note), (turn, row) =>
    {
        if (row.Finding is { } finding) return Refused.AgainstRule($"'{id}' was found by step {finding.Step} at station kind '{finding.StationKind}'; only a retest shows that it is in order");
        if (row.State == NonconformityStates.Open && passed) return Refused.AgainstRule($"nothing was done about '{id}' yet; say what, with 'eol repair'");
        return row.RepairedBy == by.Badge
            ? Refused.AgainstRule($"'{by.Badge}' worked on '{id}'; somebody else inspects it")
            : Done(turn, id, new NonconformityInspected(id, passed, note), by);
    });

    /// <summary>Lets the vehicle be used as it is; by two persons.</summary>
    /// <param name="second">The second person, with the role quality.</param>
    public Outcome<Nonconformity> Concede(SignedIn by, SignedIn second, string id, string reason) =>
        Change("give a concession", by, [Role.Engineer, Role.Quality], id, TextRules.Text("reason", reason), (turn, _) =>
            second.Badge == by.Badge ? Refused.NotAllowed("a concession wants a second person; the same one signed twice")
            : Rights.Miss(turn, second, "give a concession as the second person", Role.Quality) is { } miss ? miss
            : Done(turn, id, new ConcessionGiven(id, reason, second.Badge), by));

    private Outcome<Nonconformity> Repair(SignedIn by, string id, string kind, string what, ImmutableArray<FittedPart> parts)
    {
        var fault = TextRules.Text("text of what was done", what) ?? PartFault(parts);
        return Change(kind, by, [Role.Repairer, Role.Engineer], id, fault, (turn, _) => Done(turn, id, new RepairDone(id, kind, what, parts), by));
    }

    private Outcome<Nonconformity> Change(string what, SignedIn by, ReadOnlySpan<Role> roles, string id, Refused? fault, Func<IActTurn, NonconformityRow, Outcome<Nonconformity>> decide) =>
        _desk.Change<Nonconformity>(what, by, roles, TextRules.Id("nonconformity", id) ?? fault, turn =>
            turn.Nonconformities.Find(id) is not { } row ? Refused.Unknown($"there is no nonconformity '{id}'; 'eol nonconformity list' shows them")
            : row.IsOpen ? decide(turn, row)
            : Refused.AgainstRule($"'{id}' is {row.State}; open another one for what was found since"));

    private static Refused? CatalogueFault(ImmutableArray<CatalogueCode> catalogue, string code, string? place)
    {
        if (catalogue.IsEmpty) return null;
        if (catalogue.FirstOrDefault(one => one.Code == code) is not { } known) return Refused.Unknown($"the plant's catalogue has no nonconformity '{code}'; it has {string.Join(", ", catalogue.Select(one => one.Code))}");
        return place is null || known.MayBeAt(place) ? null : Refused.Unknown($"'{code}' is never at {TextRules.Quote(place)} by the plant's catalogue; write one of {string.Join(", ", known.Where)}");
    }

    private static Refused? PartFault(ImmutableArray<FittedPart> parts)
    {
        if (parts.Length > MostParts) return Refused.Malformed($"{parts.Length} parts are named, {MostParts} are the most");
        foreach (var part in parts)
        {
            if ((TextRules.Name("part", part.Part) ?? TextRules.Name("serial", part.Serial)) is { } fault) return fault;
        }

        return null;
    }

    private static Outcome<Nonconformity> Done(IActTurn turn, string id, Act act, SignedIn by)
    {
        turn.Append(act, by.Badge);
        return Nonconformity.Of(turn.Nonconformities.Find(id)!);
    }
}
