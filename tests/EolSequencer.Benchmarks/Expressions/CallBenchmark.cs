using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Benchmarks.Expressions;

/// <summary>One call of a compiled expression beside a delegate written by hand that does the same.</summary>
[MemoryDiagnoser]
public class CallBenchmark
{
    private static string _sequence = "";
    private readonly Scope _scope = new();
    private Expression _expression = null!;
    private Func<ExpressionScope, Value> _byHand = null!;

    internal static void Run(string sequence)
    {
        _sequence = sequence;
        BenchmarkRunner.Run<CallBenchmark>(ManualConfig.Create(DefaultConfig.Instance)
            .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance))
            .WithOptions(ConfigOptions.DisableOptimizationsValidator)
            .WithArtifactsPath(Path.Combine(Path.GetTempPath(), "eol-benchmark")));
    }

    [GlobalSetup]
    public void Setup()
    {
        var loaded = SequenceLoader.Load(_sequence, ExpressionCache.None);
        _expression = ((StepAction.Compute)((Step)loaded.Sequence!.Steps[1]).Action).Expression;
        _byHand = scope => new NumberValue(In(scope.Channel(0)) - In(scope.Channel(1)) + 2m, null);
    }

    [Benchmark(Baseline = true)]
    public Value ByHand() => _byHand(_scope);

    [Benchmark]
    public Value Compiled() => _expression.Evaluate(_scope);

    private static decimal In(Value value) =>
        ((NumberValue)value).TryIn(Ampere, out var number) ? number : throw new ExpressionFault("too large");

    private static readonly Unit Ampere = UnitTable.Required("A");

    private sealed class Scope : ExpressionScope
    {
        public Scope()
        {
            var value = new NumberValue(4.25m, UnitTable.Required("A"));
            Sample([value, value]);
        }

        public override Value Vehicle(string option) => throw new NotSupportedException();

        public override Value Order(string fact, string? index) => throw new NotSupportedException();

        public override Value Argument(string name) => throw new NotSupportedException();

        public override int Edges(int slot) => 0;

        public override ResultView? Result(int slot) => null;

        public override Trace Trace(int slot) => throw new NotSupportedException();

        public override Verdict RunVerdict => Verdict.None;

        protected override Value NoValue(int slot) => throw new NotSupportedException();
    }
}
