namespace EolSequencer.Model.Judging;

/// <summary>How much a miss of this step matters.</summary>
public enum StepClass
{
    /// <summary>A miss can hurt people.</summary>
    Safety,

    /// <summary>A miss leaves the vehicle without a function. The default.</summary>
    Function,

    Other,
}
