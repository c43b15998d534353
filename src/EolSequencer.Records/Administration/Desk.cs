using EolSequencer.Records.People;

namespace EolSequencer.Records.Administration;

/// <summary>The way of every service to the record: asks whether the person may, and has every refusal noted.</summary>
/// <param name="note">Told of every refusal, on one line and without secrets.</param>
internal sealed class Desk(IActStore store, Action<string> note)
{
    public T Read<T>(Func<IActView, T> read) => store.Read(read);

    /// <summary>Refuses and says so in the log.</summary>
    /// <param name="what">What was asked for: <c>add person</c>.</param>
    /// <param name="by">Badge as it was given; null: nobody.</param>
    public Refused Refuse(string what, string? by, Refused refused)
    {
        note($"refused: {what}{(by is null ? "" : $" by {TextRules.Quote(by)}")}: {refused.Why}");
        return refused;
    }

    /// <summary>One turn of a person who has one of these roles.</summary>
    /// <param name="texts">What is wrong with what was given, first fault first; null: nothing.</param>
    public Outcome<T> Change<T>(string what, SignedIn by, ReadOnlySpan<Role> roles, Refused? texts, Func<IActTurn, Outcome<T>> decide)
        where T : class
    {
        if (texts is not null) return Refuse(what, by.Badge, texts);
        var allowed = roles.ToArray();
        var outcome = store.Change(turn => Rights.Miss(turn, by, what, allowed) is { } miss ? miss : decide(turn));
        return outcome.IsDone ? outcome : Refuse(what, by.Badge, outcome.Refused);
    }

    /// <summary>One turn of nobody in particular: signing in.</summary>
    public Outcome<T> Change<T>(string what, string? by, Func<IActTurn, Outcome<T>> decide)
        where T : class
    {
        var outcome = store.Change(decide);
        return outcome.IsDone ? outcome : Refuse(what, by, outcome.Refused);
    }
}
