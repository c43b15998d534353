using System.Globalization;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Randomness;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Operators;

/// <summary>One prompt on its way through the hands of the simulated person.</summary>
internal sealed class Errand : IDue
{
    private const int Arrive = 0;
    private const int Finish = 1;
    private const int FirstMovement = 2;

    private readonly SimulatedOperator _person;

    // Completed from the schedule, never from inside AskAsync. Continuations that were to run asynchronously would go by
    // way of the thread pool when somebody waits for the first of several tasks.
    private readonly TaskCompletionSource<Answer> _answer = new();
    private readonly List<Action> _movements = [];
    private Action? _releaseWhenSeen;
    private TimeSpan _busyUntil;

    public Errand(SimulatedOperator person, Prompt prompt, ulong seed)
    {
        (_person, Prompt) = (person, prompt);
        Random = new RandomStream(seed, string.Create(CultureInfo.InvariantCulture, $"{prompt.Step}#{prompt.Attempt}/{prompt.Kind}"));
    }

    public Prompt Prompt { get; }

    public RandomStream Random { get; }

    public Van Van => _person.Van;

    public VehicleFacts Facts => _person.Facts;

    public OperatorHabits Habits => _person.Habits;

    public Task<Answer> Answered => _answer.Task;

    /// <summary>Nobody waits for it any more: confirmed by a device, out of time, or answered.</summary>
    public bool IsOver { get; private set; }

    /// <summary>Whether hands are at it.</summary>
    public bool HasBegun { get; private set; }

    /// <summary>The value of a loop name or parameter of the step, such as <c>front_left</c>.</summary>
    public string Value(string name) => Prompt.ValueOf(name) ?? "";

    /// <summary>0 for left, 1 for right; the other one when sides are mixed up.</summary>
    public int Side(string name) => (Value(name) == "right" ? 1 : 0) ^ (Habits.MixesUpSides ? 1 : 0);

    /// <summary>A further movement that long after the one before.</summary>
    public Errand Then(TimeSpan pause, Action movement)
    {
        _movements.Add(movement);
        _busyUntil = (_busyUntil > Van.Now ? _busyUntil : Van.Now) + (pause * Habits.Slowness);
        _person.Schedule.At(_busyUntil, this, FirstMovement + _movements.Count - 1);
        return this;
    }

    /// <summary>Hands stay there until the prompt is gone, because a device has seen it; then this is done.</summary>
    public void HoldUntilSeen(Action release) => _releaseWhenSeen = release;

    /// <summary>Hands or feet stay there beyond this prompt, until the next movement or a look that ends it.</summary>
    public void KeepHolding(Action release) => _person.Hold(release);

    /// <summary>Comes to the prompt after walking and reading.</summary>
    public void ApproachIn(TimeSpan wait) => _person.Schedule.At(Van.Now + wait, this, Arrive);

    public void Say(Answer answer)
    {
        if (IsOver) return;
        IsOver = true;
        _person.Ended(this);
        _answer.TrySetResult(answer);
    }

    /// <summary>The prompt is withdrawn.</summary>
    public void Withdraw(CancellationToken cancel)
    {
        if (IsOver) return;
        IsOver = true;
        if (!HasBegun) _person.Ended(this);
        else if (_releaseWhenSeen is { } release)
        {
            _releaseWhenSeen = null;
            Then(Random.Duration(TimeSpan.FromMilliseconds(350), 0.2), release);
            FinishWhenFree();
        }

        _answer.TrySetCanceled(cancel);
    }

    public void Begin() => HasBegun = true;

    /// <summary>The hands are free for the next prompt once the last movement is done.</summary>
    public void FinishWhenFree()
    {
        if (_releaseWhenSeen is null || IsOver) _person.Schedule.At(_busyUntil > Van.Now ? _busyUntil : Van.Now, this, Finish);
    }

    /// <inheritdoc/>
    public void Due(int what)
    {
        switch (what)
        {
            case Arrive:
                _person.Reach(this);
                break;
            case Finish:
                _person.Ended(this);
                break;
            default:
                _movements[what - FirstMovement]();
                break;
        }
    }
}
