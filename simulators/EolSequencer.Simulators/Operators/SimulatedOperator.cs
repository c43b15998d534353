using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Operators;

/// <summary>
/// A person who does on the simulated vehicle what prompts ask, with the delays of a person, and judges by what the
/// vehicle shows. There is one pair of hands: of several prompts on a screen one is done after the other.
/// </summary>
/// <remarks>
/// What is done or looked at stands in <see cref="StartUpPlans"/> by the step's pattern. A prompt that is not there:
/// a confirmation and a caution are confirmed; a question whether to go on is answered with "again" once, then with
/// "go on"; everything else gets no answer, so that a step nobody has described does not pass by itself.
/// </remarks>
internal sealed class SimulatedOperator(Van van, VehicleFacts facts, OperatorHabits habits, ISchedule schedule, ulong seed) : IOperator
{
    private readonly Queue<Errand> _waiting = new();
    private readonly HashSet<string> _triedAgain = [];
    private Errand? _current;
    private Action? _held;
    private string? _place;
    private string? _screen;

    public Van Van => van;

    public VehicleFacts Facts => facts;

    public OperatorHabits Habits => habits;

    public ISchedule Schedule => schedule;

    /// <inheritdoc/>
    public Task<Answer> AskAsync(Prompt prompt, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(prompt);
        if (cancel.IsCancellationRequested) return Task.FromCanceled<Answer>(cancel);
        var errand = new Errand(this, prompt, seed);
        if (cancel.CanBeCanceled)
        {
            cancel.UnsafeRegister(static (state, token) => ((Errand)state!).Withdraw(token), errand);
        }

        _waiting.Enqueue(errand);
        TakeNext();
        return errand.Answered;
    }

    /// <inheritdoc/>
    public IDisposable Show(Notice notice) => Nothing.Instance;

    /// <summary>Holds on to something; what was held before is let go.</summary>
    public void Hold(Action release)
    {
        LetGo();
        _held = release;
    }

    /// <summary>The person stands before the prompt and has read it.</summary>
    public void Reach(Errand errand)
    {
        if (errand.IsOver)
        {
            Ended(errand);
            return;
        }

        if (habits.HasLeft || IsNamed(habits.Ignored, errand.Prompt)) return;
        errand.Begin();
        switch (StartUpPlans.Find(errand.Prompt))
        {
            case Plan.Do plan:
                LetGo();
                plan.Act(errand);
                if (errand.Prompt.Kind == PromptKind.Confirm) errand.Then(TimeSpan.FromMilliseconds(400), () => errand.Say(new Answer.Confirmed()));
                errand.FinishWhenFree();
                break;
            case Plan.Look { First: { } first } plan:
                first(errand);
                errand.Then(TimeSpan.FromMilliseconds(600), () => Judge(errand, plan));
                errand.FinishWhenFree();
                break;
            case Plan.Look plan:
                Judge(errand, plan);
                break;
            case Plan.Say plan:
                errand.Say(new Answer.Text(plan.Text(errand)));
                break;
            default:
                AnswerUnknown(errand);
                break;
        }
    }

    /// <summary>The hands have done with a prompt.</summary>
    public void Ended(Errand errand)
    {
        if (_current != errand) return;
        _current = null;
        TakeNext();
    }

    private void TakeNext()
    {
        while (_current is null && _waiting.TryDequeue(out var next))
        {
            if (next.IsOver) continue;
            _current = next;
            next.ApproachIn(TimeToReach(next) * habits.Slowness);
        }
    }

    private TimeSpan TimeToReach(Errand errand)
    {
        var prompt = errand.Prompt;
        var time = errand.Random.Duration(ReadingTime(prompt), 0.3);
        if (prompt.OperatorPlace is { } place && place != _place)
        {
            if (_place is not null) time += errand.Random.Duration(TimeSpan.FromSeconds(3.2), 0.25);
            _place = place;
        }

        _screen = prompt.Screen;
        return time;
    }

    private TimeSpan ReadingTime(Prompt prompt) => prompt.Kind switch
    {
        PromptKind.Act or PromptKind.Confirm => TimeSpan.FromSeconds(prompt.Screen is not null && prompt.Screen == _screen ? 0.6 : 1.1),
        PromptKind.Judge => TimeSpan.FromSeconds(2.2),
        PromptKind.Caution => TimeSpan.FromSeconds(1.4),
        PromptKind.Enter => TimeSpan.FromSeconds(4),
        _ => TimeSpan.FromSeconds(2),
    };

    private void Judge(Errand errand, Plan.Look plan)
    {
        var where = plan.Find(van);
        if (plan.ThenLetsGo) LetGo();
        if (IsNamed(habits.Misjudged, errand.Prompt)) where = where is null ? "" : null;
        errand.Say(where is null ? new Answer.Ok() : new Answer.NotOk(where.Length > 0 ? where : null));
    }

    private void AnswerUnknown(Errand errand)
    {
        switch (errand.Prompt.Kind)
        {
            case PromptKind.Confirm or PromptKind.Caution:
                errand.Say(new Answer.Confirmed());
                break;
            case PromptKind.Decide:
                errand.Say(_triedAgain.Add(errand.Prompt.Step) ? new Answer.Again() : new Answer.GoOn());
                break;
            default:
                Ended(errand); // the hands are free, the prompt stands until its time is over
                break;
        }
    }

    private void LetGo()
    {
        var release = _held;
        _held = null;
        release?.Invoke();
    }

    private static bool IsNamed(HashSet<string> steps, Prompt prompt) => steps.Count > 0 && (steps.Contains(prompt.StepPattern) || steps.Contains(prompt.Step));

    private sealed class Nothing : IDisposable
    {
        public static Nothing Instance { get; } = new();

        public void Dispose()
        {
        }
    }
}
