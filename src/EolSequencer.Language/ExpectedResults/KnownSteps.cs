using System.Collections.Immutable;
using EolSequencer.Language.Binding.Sequences;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>The steps and groups of a sequence as a test may name them: by their full id, or for all loop values.</summary>
internal sealed class KnownSteps
{
    private readonly Dictionary<string, List<StepPath>> _steps = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _groups = new(StringComparer.Ordinal);

    public KnownSteps(CheckedSequence sequence)
    {
        foreach (var path in StepPath.In(sequence))
        {
            foreach (var name in new HashSet<string>(StringComparer.Ordinal) { path.Id, path.Pattern })
            {
                if (path.Node is Step) Note(name, path);
                else _groups.TryAdd(name, path.Pattern);
            }
        }
    }

    /// <summary>What a path stands for.</summary>
    /// <param name="Ids">The full ids, at least one.</param>
    /// <param name="Step">The step as it is written; the same for all ids.</param>
    /// <param name="Index">The one value of a channel that is read as a whole; null: no such is named.</param>
    public sealed record Found(ImmutableArray<string> Ids, Step Step, string? Index);

    /// <summary>The steps of a path; null: already reported.</summary>
    public Found? Find(YamlScalar path, Report report)
    {
        if (_steps.TryGetValue(path.Text, out var steps)) return Of(steps, null);
        if (Indexed(path.Text) is { } value) return value;
        if (_groups.TryGetValue(path.Text, out var pattern))
        {
            var first = _steps.Keys.First(name => name.StartsWith(pattern + ".", StringComparison.Ordinal));
            report.Add(ExpectedCodes.GroupOfSteps, path.Place, $"{Shown.Quoted(path.Text)} is a group", $"name its steps one by one, such as  {first}");
            return null;
        }

        ReportUnknown(path, _steps.Keys, report);
        return null;
    }

    /// <summary>Whether a path names a step or a group; reported when not.</summary>
    public bool Has(YamlScalar path, Report report)
    {
        if (_steps.ContainsKey(path.Text) || _groups.ContainsKey(path.Text)) return true;
        ReportUnknown(path, _steps.Keys.Concat(_groups.Keys), report);
        return false;
    }

    // One value of a channel that is read as a whole belongs to the step in front of the bracket.
    private Found? Indexed(string path)
    {
        if (!path.EndsWith(']') || path.LastIndexOf('[') is not (> 0 and var open)) return null;
        var index = path[(open + 1)..^1];
        return _steps.TryGetValue(path[..open], out var steps) && FoundValue.Of((Step)steps[0].Node)?.Indexes.Contains(index) == true ? Of(steps, index) : null;
    }

    private static Found Of(List<StepPath> steps, string? index) => new([.. steps.Select(step => step.Id)], (Step)steps[0].Node, index);

    private void Note(string name, StepPath path)
    {
        if (!_steps.TryGetValue(name, out var steps)) _steps[name] = steps = [];
        steps.Add(path);
    }

    private static void ReportUnknown(YamlScalar path, IEnumerable<string> known, Report report)
    {
        var near = Nearest.Of(path.Text, known);
        report.Add(ExpectedCodes.UnknownStep, path.Place, $"the sequence has no {Shown.Quoted(path.Text)}", near is null ? null : $"did you mean '{near}'?");
    }
}
