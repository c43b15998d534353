using System.Globalization;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.People;

namespace EolSequencer.Records.Holds;

/// <summary>Containment: keeps back vehicles that may share a fault, and lets them go again.</summary>
public sealed class HoldService
{
    /// <summary>The most vehicles that one hold names one by one.</summary>
    public const int MostNamed = 500;

    private readonly Desk _desk;

    internal HoldService(Desk desk) => _desk = desk;

    /// <summary>Places a hold on all vehicles of a query, those that match later too.</summary>
    public Outcome<Hold> Place(SignedIn by, HoldQuery query, string reason) => _desk.Change<Hold>("place a hold", by, [Role.Quality], TextRules.Text("reason", reason) ?? Fault(query), turn =>
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"hold-{turn.Holds.Count + 1:0000}");
        turn.Append(
            new HoldPlaced(
                id, reason, new HoldMatch(turn, query).Vehicles().Count, query.Vins, query.Fact, query.Value, Text(query.From), Text(query.Until), query.Station, query.Instrument, query.Program),
            by.Badge);
        return Hold.Of(turn.Holds.Find(id)!);
    });

    /// <summary>Lifts a hold.</summary>
    public Outcome<Hold> Lift(SignedIn by, string id, string reason) => _desk.Change<Hold>("lift a hold", by, [Role.Quality], TextRules.Id("hold", id) ?? TextRules.Text("reason", reason), turn =>
    {
        if (turn.Holds.Find(id) is not { } hold) return Refused.Unknown($"there is no hold '{id}'; 'eol hold list' shows them");
        if (hold.State == HoldRow.IsLifted) return Refused.AgainstRule($"hold '{id}' was lifted already: {hold.Lifted}");
        turn.Append(new HoldLifted(id, reason), by.Badge);
        return Hold.Of(turn.Holds.Find(id)!);
    });

    private static Refused? Fault(HoldQuery query)
    {
        if (query.AsksNothing) return Refused.Malformed("the query asks nothing and would hold every vehicle; name vehicles, a fact, a time, a station, an instrument or a program");
        if (query.Vins.Length > MostNamed) return Refused.Malformed($"{query.Vins.Length} vehicles are named, {MostNamed} are the most; ask by a fact or a time");
        if (query.Fact is null != query.Value is null) return Refused.Malformed("a fact and its value go together");
        if (query.From >= query.Until) return Refused.Malformed("the time ends before it begins; swap the two");
        foreach (var vin in query.Vins)
        {
            if (TextRules.Vin(vin) is { } fault) return fault;
        }

        return Optional("fact", query.Fact) ?? Optional("value", query.Value) ?? Optional("station", query.Station) ?? Optional("instrument", query.Instrument) ?? Optional("program", query.Program);
    }

    private static Refused? Optional(string what, string? text) => text is null ? null : TextRules.Name(what, text);

    private static string? Text(DateTimeOffset? moment) => moment is { } at ? UtcText.Of(at) : null;
}
