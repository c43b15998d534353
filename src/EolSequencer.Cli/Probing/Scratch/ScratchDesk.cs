using System.Globalization;
using EolSequencer.Cli.Probing.Verbs;
using EolSequencer.Language.Scratch;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;
using EolSequencer.Station.Time;

namespace EolSequencer.Cli.Probing.Scratch;

/// <summary>
/// Runs lines of C# beside the session: each on a thread of its own, so that one that hangs is given up and the session goes on.
/// Readings are taken on the session's thread, one after the other.
/// </summary>
internal sealed class ScratchDesk : IScratchReader
{
    /// <summary>Compiling the first line is most of a second on a fast computer, and many on a busy one.</summary>
    private static readonly TimeSpan CompileLimit = TimeSpan.FromMinutes(2);

    private readonly ProbeBench _bench;
    private readonly ProbeScreen _screen;
    private readonly StationLoop? _loop;
    private readonly TimeSpan _limit;
    private readonly ScratchPad _pad;

    /// <summary>The line to which a thread belongs, also when the line starts further ones.</summary>
    private readonly AsyncLocal<Evaluation?> _current = new();

    /// <param name="loop">The loop of a session in real time; null in virtual time.</param>
    /// <param name="limit">How long a line may run by the clock on the wall.</param>
    public ScratchDesk(ProbeBench bench, ProbeScreen screen, StationLoop? loop, TimeSpan limit)
    {
        (_bench, _screen, _loop, _limit) = (bench, screen, loop, limit);
        _pad = new ScratchPad(bench.Roles, this);
    }

    public async Task EvaluateAsync(string line, ProbeTurn turn)
    {
        using var evaluation = new Evaluation(_loop);
        using var limit = new CancellationTokenSource(CompileLimit, TimeProvider.System);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, turn.Asked);
        Start(line, evaluation);
        try
        {
            while (true)
            {
                switch (await evaluation.Messages.TakeAsync(both.Token))
                {
                    case Evaluation.Message.Begins: limit.CancelAfter(_limit); break;
                    case Evaluation.Message.Wants wants: await AnswerAsync(wants, turn); break;
                    case Evaluation.Message.Ends { Result: var result }:
                        Tell(result);
                        return;
                }
            }
        }
        catch (OperationCanceledException)
        {
            _pad.Abandon();
            var why = limit.IsCancellationRequested ? string.Create(CultureInfo.InvariantCulture, $"it has not ended within {_limit.TotalSeconds:0.#} s") : "you asked for its end";
            _screen.Write($"given up: {why}. What it does goes on beside the session until it ends or you quit; its variables are not kept.");
        }
    }

    Value IScratchReader.Read(string role, string channel, string? index) =>
        _current.Value is { } asker ? asker.Ask(role, channel, index) : throw new ScratchTrouble("the line that asks has ended");

    private void Start(string line, Evaluation evaluation)
    {
        var thread = new Thread(() =>
        {
            _current.Value = evaluation;
            var result = _pad.Evaluate(line, () => evaluation.Messages.Post(new Evaluation.Message.Begins()));
            evaluation.Messages.Post(new Evaluation.Message.Ends(result));
        })
        { IsBackground = true, Name = "line of C#" };
        thread.Start();
    }

    private async Task AnswerAsync(Evaluation.Message.Wants wants, ProbeTurn turn)
    {
        try
        {
            var name = wants.Index is null ? $"{wants.Role}.{wants.Channel}" : $"{wants.Role}.{wants.Channel}[{wants.Index}]";
            var found = _bench.Channel(name);
            var reading = await ReadVerb.OneAsync(_bench, found, wants.Index, turn);
            if (reading.Value is { } value) wants.Answer.SetResult(value);
            else wants.Answer.SetException(new ScratchTrouble($"{name} has {ReadingText.Of(reading)}"));
        }
        catch (ProbeTrouble trouble)
        {
            wants.Answer.SetException(new ScratchTrouble(trouble.Message));
        }
    }

    private void Tell(ScratchResult result)
    {
        foreach (var line in (result.Trouble is null ? result.Text : $"error: {result.Trouble}").Split('\n', StringSplitOptions.RemoveEmptyEntries)) _screen.Write(line);
    }
}
