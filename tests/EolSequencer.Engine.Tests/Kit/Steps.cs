using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Tests.Kit;

/// <summary>Short forms of steps.</summary>
internal static class Steps
{
    public static Step Read(string id, ChannelUse channel, Expectation? expect = null, double within = 5) =>
        Of(id, new StepAction.Read(channel, Channels.Of(channel)), within) with { Expect = expect };

    public static Step AskUntil(string id, Expression until, double within = 8, bool edge = true) =>
        Of(id, new StepAction.Ask(LocalText.Plain(id), until, edge), within);

    public static Step Await(string id, Expression condition, double within = 5, bool edge = false) =>
        Of(id, new StepAction.Await(condition, edge), within);

    public static Step Judge(string id, double within = 20) => Of(id, new StepAction.Judge(LocalText.Plain(id)), within);

    public static Step Confirm(string id, double within = 20) => Of(id, new StepAction.Ask(LocalText.Plain(id), null, true), within);

    public static Step Set(string id, string action, bool to) =>
        Of(id, new StepAction.SetTo("bus", Channels.BusKind.Actions[action], null, new Operand.Constant(TruthValue.Of(to))), 5);

    public static Step Wait(string id, decimal seconds) =>
        Of(id, new StepAction.Wait(new Operand.Constant(Channels.Seconds(seconds))), null);

    public static Step Of(string id, StepAction action, double? within) => new()
    {
        Id = id,
        Place = SourcePlace.None,
        Action = action,
        Within = within is { } seconds ? Time((decimal)seconds) : null,
    };

    public static Group Group(string id, params Node[] children) => new() { Id = id, Place = SourcePlace.None, Children = [.. children] };

    public static Together Together(params Node[][] branches) => new()
    {
        Id = "",
        Place = SourcePlace.None,
        Branches = [.. branches.Select((branch, at) => new Branch($"b{at}", [.. branch]))],
    };

    public static Operand Time(decimal seconds) => new Operand.Constant(Channels.Seconds(seconds));

    public static Expectation Volts(decimal? low, decimal? high) => Window(low, high, "V");

    public static Expectation Window(decimal? low, decimal? high, string unit)
    {
        var of = UnitTable.Required(unit);
        return new Expectation.Within(End(low, of), End(high, of), of);
    }

    public static RetryRule Retry(int times) => new(
        times, [Model.Judging.Verdict.Fail, Model.Judging.Verdict.Inconclusive, Model.Judging.Verdict.Error], TimeSpan.Zero);

    private static Operand? End(decimal? number, Unit unit) => number is { } some ? new Operand.Constant(new NumberValue(some, unit)) : null;
}
