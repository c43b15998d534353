using EolSequencer.Records.Correcting;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.People;
using EolSequencer.Records.Release;
using EolSequencer.Records.SequenceControl;

namespace EolSequencer.Records.Administration;

/// <summary>The services that people act through: for the command line and for pages. Trouble with the record is a <see cref="RecordFault"/>.</summary>
public sealed class RecordAdministration
{
    internal RecordAdministration(IActStore store, TimeProvider time, Action<string> note)
    {
        var desk = new Desk(store, note);
        SignIn = new SignIn(desk, time);
        People = new PersonService(desk);
        Nonconformities = new NonconformityService(desk);
        Holds = new HoldService(desk);
        Vins = new VinService(desk);
        Releases = new ReleaseService(desk);
        Approvals = new ApprovalService(desk);
    }

    /// <summary>Badge and PIN or password.</summary>
    public SignIn SignIn { get; }

    /// <summary>Who may do what.</summary>
    public PersonService People { get; }

    /// <summary>What people do about nonconformities.</summary>
    public NonconformityService Nonconformities { get; }

    /// <summary>Containment.</summary>
    public HoldService Holds { get; }

    /// <summary>Numbers of vehicles that were wrong.</summary>
    public VinService Vins { get; }

    /// <summary>Which vehicles may leave.</summary>
    public ReleaseService Releases { get; }

    /// <summary>Which sequence texts may be used in production.</summary>
    public ApprovalService Approvals { get; }
}
