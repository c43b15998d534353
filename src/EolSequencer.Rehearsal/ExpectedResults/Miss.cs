using EolSequencer.Model.Events;
using EolSequencer.Model.Source;

namespace EolSequencer.Rehearsal.ExpectedResults;

/// <summary>Something came out otherwise than a test expects.</summary>
/// <param name="Place">Where it is expected.</param>
/// <param name="Of">What it is about: the id of a step, <c>verdict</c>, a fault.</param>
/// <param name="Expected">What is expected, in words.</param>
/// <param name="Found">What was found, in words.</param>
/// <param name="Judged">What the step came to; null when it did not run or it is not about a step's verdict.</param>
public sealed record Miss(SourcePlace Place, string Of, string Expected, string Found, Judged? Judged = null)
{
    /// <summary>The one-line form: <c>file:line:column: lights.rear: expected pass, found fail</c>.</summary>
    public override string ToString() => $"{Place}: {Of}: expected {Expected}, found {Found}";
}
