namespace EolSequencer.Model.Judging;

/// <summary>The verdicts of the open test notation TTCN-3, in its order, worst last. The list is closed.</summary>
/// <remarks>Source: ETSI ES 201 873-1, verdict type: none &lt; pass &lt; inconc &lt; fail &lt; error.</remarks>
public enum Verdict
{
    /// <summary>Nothing was judged.</summary>
    None,

    /// <summary>The vehicle is as it should be.</summary>
    Pass,

    /// <summary>No decision could be made.</summary>
    Inconclusive,

    /// <summary>The vehicle is not as it should be.</summary>
    Fail,

    /// <summary>The test equipment did not do its work.</summary>
    Error,
}
