using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>One step while its run is replayed: how it went on as recorded, and how it would have.</summary>
internal sealed class StepTrack(PlacedStep? old, PlacedStep? now)
{
    private FlowState? _oldFlow = old is null ? null : new FlowState(old.Planned.Step);
    private FlowState? _newFlow = now is null ? null : new FlowState(now.Planned.Step);
    private FlowStep? _next;

    public PlacedStep? Old { get; } = old;

    public PlacedStep? New { get; } = now;

    public StepDifferences? Differences { get; set; }

    public StepStanding? Was { get; set; }

    public StepStanding? Is { get; private set; }

    public string? Why { get; private set; }

    /// <summary>The verdict of the first attempt by the revision; null when it had none, or when it is undecidable.</summary>
    public Verdict? FirstIs { get; private set; }

    /// <summary>In how many attempts of a group the step was done.</summary>
    public int Rounds { get; private set; }

    /// <summary>True when an attempt counts otherwise than recorded, whatever came after it.</summary>
    public bool HasChanged { get; private set; }

    /// <summary>A person stopped it or passed it over; said of the attempt that ends next.</summary>
    public bool ByPerson { get; set; }

    /// <summary>The readings of a sample that ends next.</summary>
    public SeriesRecorded? Series { get; set; }

    /// <summary>An attempt is there in the record. False: under the revision it would not have been made.</summary>
    public bool BeginAttempt()
    {
        if (_oldFlow is null or { WantsAnother: false } || Rounds == 0)
        {
            // Further attempts than the step itself wants are those of a group around it.
            Rounds++;
            _oldFlow = Old is null ? null : new FlowState(Old.Planned.Step);
            _newFlow = New is null ? null : new FlowState(New.Planned.Step);
        }

        return _newFlow is { WantsAnother: true };
    }

    /// <summary>What followed as recorded.</summary>
    public FlowStep? EndedAsRecorded(Judged judged)
    {
        Was = new StepStanding(StandingKind.Judged, judged.Counted, judged.Criteria, judged.Detail);
        _oldFlow?.Judged(judged.Measured, judged.Counted, ByPerson);
        return _oldFlow?.Next;
    }

    /// <summary>What would have followed.</summary>
    public FlowStep? Ended(StepStanding standing, Verdict measured, Judged recorded)
    {
        var isFirst = Is is null;
        (Is, Why) = (standing, null);
        if (isFirst) FirstIs = standing.Counted;
        HasChanged |= standing.Counted != recorded.Counted;
        _newFlow?.Judged(measured, standing.Counted, ByPerson);
        return _next = _newFlow?.Next;
    }

    /// <summary>How it stands without having been judged.</summary>
    public void Stand(StepStanding standing, string? why)
    {
        (Is, Why) = (standing, why);
        HasChanged = true;
        if (standing.Kind == StandingKind.Undecidable) FirstIs = null;
    }

    /// <summary>Nothing more of it is in the record: what the revision would still have done cannot be known.</summary>
    public void End()
    {
        if (Is is not { Kind: StandingKind.Judged } || _next == _oldFlow?.Next) return;
        if (_next == FlowStep.Again) (Is, Why) = (StepStanding.Undecidable, "it would have been tried again");
        if (_next == FlowStep.AskPerson) (Is, Why) = (StepStanding.Undecidable, "a person would have been asked what to do");
    }
}
