using System.Collections.Immutable;

namespace EolSequencer.Model.Devices;

/// <summary>How the vehicle bus does an action. <c>Ecu</c> is null when the index names the control unit, or, without an index, when all fitted ones are meant.</summary>
public abstract record ActionSource
{
    private ActionSource() { }

    /// <summary>InputOutputControlByIdentifier with short-term adjustment (ISO 14229-1, service 2F 03).</summary>
    /// <param name="Identifiers">The identifier for each index; the key is empty for an action without index, or one whose index names the control unit.</param>
    public sealed record Control(string? Ecu, ImmutableDictionary<string, int> Identifiers, RawForm Form) : ActionSource;

    /// <summary>WriteDataByIdentifier (service 2E), behind a security level when <paramref name="AccessLevel"/> is not 0.</summary>
    public sealed record Write(string? Ecu, int Identifier, RawForm Form, int AccessLevel) : ActionSource;

    /// <summary>RoutineControl, start (service 31 01) and its result.</summary>
    /// <param name="Result">Form of the first result value; null: a positive response is the confirmation.</param>
    public sealed record Routine(string? Ecu, int Identifier, RawForm? Result) : ActionSource;

    /// <summary>A service that needs no identifier.</summary>
    public sealed record Service(string? Ecu, ServiceAct Kind) : ActionSource;
}

/// <summary>Acts on a control unit as a whole.</summary>
public enum ServiceAct
{
    /// <summary>ClearDiagnosticInformation, all groups.</summary>
    ClearTroubleCodes,
    /// <summary>Every identifier this run has adjusted goes back to its control unit (2F 00).</summary>
    ReturnControl,
    /// <summary>DiagnosticSessionControl, extended session.</summary>
    ExtendedSession,
    /// <summary>DiagnosticSessionControl, default session.</summary>
    DefaultSession,
    /// <summary>ECUReset, hard.</summary>
    Reset,
}
