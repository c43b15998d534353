using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Records;
using EolSequencer.Records.Reading;

namespace EolSequencer.Rehearsal.Replay.WhatIf;

/// <summary>
/// Judges many recorded runs again, a run at a time on each core; what is kept of a run is what is counted of it. Runs that
/// did not end, or were done only in part, say nothing of a vehicle and are left out.
/// </summary>
public sealed class WhatIfRunner(CheckedRuns runs, RecordedRevisions recorded, Revision now)
{
    /// <summary>Judges them all.</summary>
    /// <param name="ids">The runs, oldest first.</param>
    /// <param name="withUnverified">True: also those that are not as they were written. They are counted in either case.</param>
    /// <param name="stop">Ends the walk; what has been judged until then is the result. From any thread.</param>
    /// <exception cref="RecordFault">The record itself cannot be read.</exception>
    public WhatIfResult Run(ImmutableArray<string> ids, bool withUnverified = false, CancellationToken stop = default)
    {
        var next = -1;
        RecordFault? fault = null;
        var sums = Enumerable.Range(0, Math.Max(1, Math.Min(Environment.ProcessorCount, ids.Length))).Select(_ => new WhatIfSums()).ToList();
        var line = sums.ConvertAll(sum => new Thread(() => Work(sum)));
        line.ForEach(thread => thread.Start());
        line.ForEach(thread => thread.Join());
        return fault is null ? WhatIfSums.Of(sums) : throw fault;

        void Work(WhatIfSums sum)
        {
            try
            {
                using var reader = runs.OpenReader(onlyFindings: true);
                while (!stop.IsCancellationRequested && Volatile.Read(ref fault) is null && Interlocked.Increment(ref next) is var at && at < ids.Length)
                {
                    if (reader.Read(ids[at]) is { } run) Judge(at, run, sum, withUnverified);
                }
            }
            catch (RecordFault trouble)
            {
                Interlocked.CompareExchange(ref fault, trouble, null);
            }
        }
    }

    private void Judge(int at, CheckedRun run, WhatIfSums sum, bool withUnverified)
    {
        if (run.Trouble is { } trouble)
        {
            sum.NoteTrouble(at, run.Run, trouble);
            if (!withUnverified || run.Events.IsEmpty) return;
        }

        var begun = (RunBegun)run.Events[0];
        if (!begun.OnlySteps.IsEmpty) sum.LeaveOut("done only in part");
        else if (run.Events[^1] is not RunEnded) sum.LeaveOut("not ended");
        else if (recorded.Of(begun).Revision is not { } old) sum.LeaveOut("its recorded texts are not accepted by this version");
        else if (ReplayFit.Misfit(now.Sequence, begun) is not null) sum.LeaveOut("of another vehicle type or station kind");
        else Judge(at, run, old, sum);
    }

    private void Judge(int at, CheckedRun run, Revision old, WhatIfSums sum)
    {
        try
        {
            sum.Add(at, RunReplay.Of(old, now, run.Events));
        }
        catch (ExpressionFault)
        {
            sum.LeaveOut("its order does not say what the sequence asks of it");
        }
    }
}
