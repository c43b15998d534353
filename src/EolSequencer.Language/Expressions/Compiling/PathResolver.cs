using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using Microsoft.CodeAnalysis;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Turns each name of an author into a read of the scope, with messages that know the plant.</summary>
internal sealed class PathResolver
{
    private const string VinName = "vin";

    private readonly Draft _draft;
    private readonly ExpressionNames _names;
    private readonly IndexReader _indexes;
    private readonly ScopeRead _reads;
    private readonly ResultResolver _results;
    private readonly TraceResolver _traces;

    public PathResolver(Draft draft, ComputedShapes shapes)
    {
        _draft = draft;
        _names = draft.Source.Names;
        _indexes = new IndexReader(draft);
        _reads = new ScopeRead(draft);
        var results = new ResultReader(draft, _indexes);
        _results = new ResultResolver(draft, results, _reads, shapes);
        _traces = new TraceResolver(draft, _indexes, results);
    }

    /// <summary>Resolves a path as far as it names something and writes the read in its place.</summary>
    public void Resolve(PathSyntax path)
    {
        if (_names.Arguments.TryGetValue(path.First, out var argument))
        {
            Write(path, $"{CodeText.Scope}.Argument({CodeText.Literal(path.First)})", argument, $"'{path.First}'");
            return;
        }

        switch (path.First)
        {
            case "vehicle" when _names.Vehicle is { } vehicle: Option(path, vehicle); break;
            case "order" when _names.Vehicle is { } vehicle: Fact(path, vehicle); break;
            case "results": _results.Resolve(path); break;
            case "trace": _traces.Resolve(path); break;
            case "run": RunVerdict(path); break;
            default:
                if (_names.Roles.ContainsKey(path.First)) Channel(path);
                else Unknown(path);
                break;
        }
    }

    /// <summary>The slot of a truth channel that <c>edges</c> counts; null when a fault has been reported.</summary>
    public int? TruthChannel(PathSyntax path)
    {
        if (!_names.Roles.ContainsKey(path.First))
        {
            _draft.Fault(ExpressionCodes.WrongOperands, path.Root.Span, "edges counts the changes of a yes-no channel", "write  edges(bus.wiper_parked)");
            return null;
        }

        if (ChannelUse(path) is not { } channel) return null;
        if (channel.Shape.Kind == ValueKind.Truth && path.Next is null) return _draft.SlotOf(channel.Use);
        _draft.Fault(ExpressionCodes.WrongOperands, path.TakenSpan, $"edges counts the changes of a yes-no channel, '{path.TakenText}' is {channel.Shape}");
        return null;
    }

    private void Channel(PathSyntax path)
    {
        if (ChannelUse(path) is not { } channel) return;
        Write(path, $"{CodeText.Scope}.Channel({_draft.SlotOf(channel.Use)})", channel.Shape, $"'{channel.Use}'");
    }

    private (ChannelUse Use, ValueShape Shape)? ChannelUse(PathSyntax path)
    {
        var channels = _names.Roles[path.First].Channels;
        if (Member(path, channels.Keys, ExpressionCodes.UnknownChannel, $"channel of '{path.First}'") is not { } name) return null;
        var channel = channels[name];
        return _indexes.TryOne(path, [.. channel.Indexes.Select(index => index.Value)], $"'{path.First}.{name}'", out var picked)
            ? (new ChannelUse(path.First, name, picked), channel.Shape)
            : null;
    }

    private void Option(PathSyntax path, VehicleType vehicle)
    {
        var options = vehicle.Options.ToDictionary(option => option.Name, option => option.Shape, StringComparer.Ordinal);
        options[VinName] = ValueShape.Text(Vin.Length);
        if (Member(path, options.Keys, ExpressionCodes.UnknownOption, $"option of vehicle type '{vehicle.Id}'") is not { } name) return;
        Write(path, $"{CodeText.Scope}.Vehicle({CodeText.Literal(name)})", options[name], $"'vehicle.{name}'");
    }

    private void Fact(PathSyntax path, VehicleType vehicle)
    {
        if (Member(path, vehicle.OrderFacts.Select(fact => fact.Name), ExpressionCodes.UnknownFact, "fact of an order") is not { } name) return;
        var fact = vehicle.OrderFacts.First(one => one.Name == name);
        if (!_indexes.TryOne(path, [.. fact.Indexes.Select(index => index.Value)], $"'order.{name}'", out var picked)) return;
        var index = picked switch
        {
            IndexUse.Fixed one => CodeText.Literal(one.Value),
            IndexUse.Named named => $"Text({CodeText.Scope}.Argument({CodeText.Literal(named.Name)}))",
            _ => "null",
        };
        Write(path, $"{CodeText.Scope}.Order({CodeText.Literal(name)}, {index})", fact.Shape, $"'order.{name}'");
    }

    private void RunVerdict(PathSyntax path)
    {
        if (Member(path, ["verdict"], ExpressionCodes.UnknownName, "part of 'run'") is null) return;
        if (!_names.RunVerdict)
        {
            _draft.Fault(ExpressionCodes.UnknownName, path.TakenSpan, "the verdict of the run is not known here", "only steps of after-verdict may ask for it");
            return;
        }

        _draft.Note(path.Taken, ResultReader.VerdictShape);
        _draft.Edits.Replace(path.TakenSpan.Start, path.TakenSpan.End, $"Word({CodeText.Scope}.RunVerdict)");
    }

    private void Write(PathSyntax path, string value, ValueShape shape, string what)
    {
        if (_reads.Convert(path, value, shape, what) is not { } read) return;
        _draft.Note(path.Taken, read.Shape);
        _draft.Edits.Replace(path.TakenSpan.Start, path.TakenSpan.End, read.Code);
    }

    /// <summary>The name behind the point, taken; null when it is missing or unknown, which has been reported.</summary>
    private string? Member(PathSyntax path, IEnumerable<string> known, DiagnosticCode code, string kind)
    {
        var names = known.ToList();
        if (path.NextName is not { } name)
        {
            _draft.Fault(ExpressionCodes.NameIncomplete, path.TakenSpan, $"behind '{path.TakenText}' a point and a name is due", Choice(names));
            return null;
        }

        if (names.Contains(name.ValueText))
        {
            path.Take();
            return name.ValueText;
        }

        var advice = Nearest.Of(name.ValueText, names) is { } near ? $"did you mean '{near}'?" : Choice(names);
        _draft.Fault(code, name.Span, $"'{name.ValueText}' is no {kind}", advice);
        return null;
    }

    private void Unknown(PathSyntax path)
    {
        string[] known =
        [
            .. _names.Arguments.Keys, .. _names.Roles.Keys,
            .. _names.Vehicle is null ? Array.Empty<string>() : ["vehicle", "order"],
            .. _names.Results is null ? Array.Empty<string>() : ["results", "trace"],
            .. _names.RunVerdict ? ["run"] : Array.Empty<string>(),
        ];
        var isUnit = UnitTable.All.Any(unit => unit.ExpressionName == path.First);
        var advice = Nearest.Of(path.First, known) is { } near ? $"did you mean '{near}'?"
            : isUnit ? $"a unit stands behind a point: bus.engine_speed.{path.First}"
            : known.Length == 0 ? "only written values may stand here"
            : _names.Roles.IsEmpty ? $"here may be named {Shown.OneOf(known)}; devices are not asked yet"
            : $"here may be named {Shown.OneOf(known)}";
        _draft.Fault(ExpressionCodes.UnknownName, path.Root.Span, $"'{path.First}' means nothing here", advice);
    }

    private static string? Choice(IReadOnlyList<string> names) =>
        names.Count == 0 ? null : $"there is {Shown.OneOf([.. names.Take(8)])}";
}
