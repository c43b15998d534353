using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>A run has one thread: an expression that does not come to an end must not take the station with it.</summary>
public class RunawayExpressionTests
{
    private readonly Bench _bench = new();
    private readonly Computing _clock;

    public RunawayExpressionTests()
    {
        _bench.Operator.Answers("next", new Answer.Ok());
        _bench.Clock = _clock = new Computing(_bench.Time);
    }

    [Fact]
    public void An_expression_that_never_ends_is_an_error_and_the_run_goes_on()
    {
        Assert.Equal(Verdict.Error, _bench.Run(Compute("runaway", static scope =>
        {
            while (true) scope.Spend(100);
        }), Steps.Judge("next")));

        var (runaway, next) = (_bench.Judged.First(), _bench.Judged.Last());
        Assert.Equal((Verdict.Error, "the expression takes more work than one evaluation may: it looks at too much, or too often"), (runaway.Measured, runaway.Detail));
        Assert.Equal((0L, Verdict.Pass), (runaway.Took, next.Measured));
    }

    [Fact]
    public void A_slow_expression_ends_with_the_time_limit_of_its_step()
    {
        var looks = 0;
        Assert.Equal(Verdict.Error, _bench.Run(Compute("slow", scope =>
        {
            while (true)
            {
                scope.Spend(100_000);
                looks++;
                _clock.Pass(TimeSpan.FromSeconds(1));
            }
        })));

        Assert.Equal("the time limit of the step came before the end of the expression", _bench.Judged.Single().Detail);
        Assert.Equal(6, looks); // within is 5 s
    }

    [Fact]
    public void A_value_that_is_there_after_the_time_limit_is_too_late()
    {
        Assert.Equal(Verdict.Error, _bench.Run(Compute("late", _ =>
        {
            _clock.Pass(TimeSpan.FromSeconds(6));
            return TruthValue.Yes;
        })));

        Assert.Equal("the value came after the limit of 5 s", _bench.Judged.Single().Detail);
    }

    private static Step Compute(string id, Func<ExpressionScope, Value> evaluate)
    {
        var expression = new Expression(id, SourcePlace.None);
        expression.Complete(new Expression.Compiled(ValueShape.Truth, [], [], evaluate));
        return Steps.Of(id, new StepAction.Compute(expression, null), within: 5);
    }

    /// <summary>A clock that goes on while something is computed, as the real one does; virtual time does not.</summary>
    private sealed class Computing(TimeProvider time) : TimeProvider
    {
        private TimeSpan _computed;

        public override long TimestampFrequency => time.TimestampFrequency;

        public void Pass(TimeSpan computed) => _computed += computed;

        public override long GetTimestamp() => time.GetTimestamp() + _computed.Ticks;

        public override DateTimeOffset GetUtcNow() => time.GetUtcNow() + _computed;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            time.CreateTimer(callback, state, dueTime, period);
    }
}
