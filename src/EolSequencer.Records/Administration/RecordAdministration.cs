using EolSequencer.Records.People;

namespace EolSequencer.Records.Administration;

/// <summary>The services that people act through: for the command line and for pages. Trouble with the record is a <see cref="RecordFault"/>.</summary>
public sealed class RecordAdministration
{
    internal RecordAdministration(IActStore store, TimeProvider time, Action<string> note)
    {
        var desk = new Desk(store, note);
        SignIn = new SignIn(desk, time);
        People = new PersonService(desk);
    }

    /// <summary>Badge and PIN or password.</summary>
    public SignIn SignIn { get; }

    /// <summary>Who may do what.</summary>
    public PersonService People { get; }
}
