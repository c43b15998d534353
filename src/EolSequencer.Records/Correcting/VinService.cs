using EolSequencer.Records.Administration;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.People;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Correcting;

/// <summary>Corrects numbers of vehicles. What was recorded is never changed: it is looked for under both numbers.</summary>
public sealed class VinService
{
    private readonly Desk _desk;

    internal VinService(Desk desk) => _desk = desk;

    /// <summary>Says that what was recorded under a number is of the vehicle with another one; taking that back is the same with the numbers changed over.</summary>
    /// <param name="merge">True: both numbers have records of their own, and they are one vehicle.</param>
    public Outcome<VinCorrection> Correct(SignedIn by, string from, string to, string reason, bool merge) =>
        _desk.Change<VinCorrection>("correct a vehicle's number", by, [Role.Quality], TextRules.Vin(from) ?? TextRules.Vin(to) ?? TextRules.Text("reason", reason), turn =>
        {
            if (from == to) return Refused.Malformed("the number is corrected to itself; name another one");
            var isBack = turn.Corrections.Find(to)?.Corrected == from;
            if (Against(turn, from, to, isBack, merge) is { } fault) return fault;
            turn.Append(new VinCorrected(from, to, reason, merge && !isBack ? true : null), by.Badge);
            return new VinCorrection(from, to, reason, by.Badge);
        });

    private static Refused? Against(IActTurn turn, string from, string to, bool isBack, bool merge)
    {
        if (turn.Corrections.Find(from)?.Corrected is { } already) return Refused.AgainstRule($"{from} was corrected to {already} before; correct {already}");
        if (isBack) return null;
        if (turn.Corrections.Find(to)?.Corrected is { } gone) return Refused.AgainstRule($"{to} was corrected to {gone}; correct to {new VinTrail(turn.Corrections).Current(gone)}, or take that back first");
        if (!IsKnown(turn, from)) return Refused.Unknown($"nothing that counts is recorded under {from}");
        return IsKnown(turn, to) && !merge
            ? Refused.AgainstRule($"{to} has records of its own: two vehicles with one number would become one; if they are the same vehicle, say so with '--merge'")
            : null;
    }

    private static bool IsKnown(IActTurn turn, string vin) =>
        turn.RunsBegun(new RunFilter { Vin = vin, Most = 1 }).Any() || turn.Nonconformities.OfVehicle(new VinTrail(turn.Corrections).All(vin)).Any();
}
