using System.Collections.Immutable;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>What names mean in an expectation of a step: C# sees results and parameters, limits are those of the vehicle type.</summary>
/// <param name="indexes">The indexes of the channel that is read as a whole; empty for one value.</param>
/// <param name="index">The index of the one value that is read; null when there is none.</param>
internal sealed class ExpectationNames(Scope scope, ImmutableArray<string> indexes, IndexUse? index) : IExpectationNames
{
    public Expression? Code(ScalarPart part, ValueShape wanted) =>
        scope.Context.Batch.Add(part.Scalar, part.Start, part.Length, scope.Operands, Wanted.Of(wanted));

    public Expectation? Limit(ExpectationSyntax.Limit limit, JudgedValue judged)
    {
        var name = limit.Name.Text;
        if (!scope.Context.Vehicle.Limits.TryGetValue(name, out var definition))
        {
            var near = Nearest.Of(name, scope.Context.Vehicle.Limits.Keys.Order(StringComparer.Ordinal));
            scope.Report.Add(LimitCodes.UnknownLimit, limit.Name.Place, $"the vehicle type '{scope.Context.Vehicle.Type.Id}' has no limit {Shown.Quoted(name)}", near is null ? null : $"did you mean '{near}'?");
            return null;
        }

        scope.Context.UsedLimits.Add(name);
        if (definition is LimitDefinition.ByIndex windows) return ByIndex(windows, limit, judged);
        if (limit.Index is { } superfluous)
        {
            scope.Report.Add(LimitCodes.IndexSuperfluous, superfluous.Place, $"limits.{name} has no windows by index");
            return null;
        }

        return definition is LimitDefinition.Rows rows ? ByVehicle(rows, judged) : Window(((LimitDefinition.Single)definition).Is, judged);
    }

    private Expectation.ByVehicle? ByVehicle(LimitDefinition.Rows limit, JudgedValue judged)
    {
        var rows = ImmutableArray.CreateBuilder<Expectation.Row>(limit.All.Length);
        foreach (var row in limit.All)
        {
            if (Window(row.Is, judged) is { } window) rows.Add(new Expectation.Row(row.When, window));
        }

        return rows.Count == limit.All.Length ? new Expectation.ByVehicle(limit.Name, rows.ToImmutable()) : null;
    }

    private Expectation.ByIndex? ByIndex(LimitDefinition.ByIndex limit, ExpectationSyntax.Limit syntax, JudgedValue judged)
    {
        ImmutableArray<string> names = [.. limit.Windows.Select(window => window.Index)];
        var own = syntax.Index is { } written ? IndexReference.Read(written, names, $"limits.{limit.Name}", scope) : null;
        if (syntax.Index is not null ? own is null : !CoversChannel(limit, names, syntax)) return null;

        var windows = ImmutableDictionary.CreateBuilder<string, Expectation>(StringComparer.Ordinal);
        foreach (var (name, node) in limit.Windows)
        {
            if (Window(node, judged) is { } window) windows[name] = window;
        }

        return windows.Count == limit.Windows.Length ? new Expectation.ByIndex(limit.Name, windows.ToImmutable()) { Index = own } : null;
    }

    /// <summary>Without an index of its own, a limit goes by the indexes of the channel.</summary>
    private bool CoversChannel(LimitDefinition.ByIndex limit, ImmutableArray<string> names, ExpectationSyntax.Limit syntax)
    {
        ImmutableArray<string> read = index switch
        {
            IndexUse.Fixed one => [one.Value],
            IndexUse.Named named => scope.Arguments.ValuesOf(named.Name),
            _ => indexes,
        };
        if (read.IsEmpty)
        {
            scope.Report.Add(LimitCodes.IndexMissing, syntax.Part.Place, $"limits.{limit.Name} has a window for each of {Shown.OneOf(names)}");
            return false;
        }

        if (read.FirstOrDefault(value => !names.Contains(value)) is not { } missing) return true;
        scope.Report.Add(LimitCodes.IndexUnknown, syntax.Part.Place, $"limits.{limit.Name} has no window for '{missing}', which is read here");
        return false;
    }

    private Expectation? Window(YamlNode node, JudgedValue judged) =>
        ExpectationParser.Parse(node, scope.Report) is { } syntax ? new ExpectationBinder(judged, this, scope.Report).Bind(syntax) : null;
}
