using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>What a group or step depends on stands before it.</summary>
internal sealed class DependencyCheck(Report report)
{
    private readonly List<string> _before = [];

    public static void Run(ImmutableArray<Node> nodes, Report report) => new DependencyCheck(report).Walk(nodes, "");

    private void Walk(ImmutableArray<Node> nodes, string around)
    {
        foreach (var node in nodes)
        {
            var id = node is Together ? around : around.Length == 0 ? node.Id : $"{around}.{node.Id}";
            foreach (var dependency in node.DependsOn.Where(dependency => !IsBefore(dependency.Name, around))) Report(dependency);
            switch (node)
            {
                case Group group:
                    Walk(group.Children, id);
                    Walk(group.Always, id);
                    break;
                case Together together:
                    foreach (var branch in together.Branches) Walk(branch.Children, id);
                    continue;
            }

            // A group stands before what follows it, not before what is inside.
            _before.Add(id);
        }
    }

    private bool IsBefore(string name, string around)
    {
        for (var level = around; ; level = level.LastIndexOf('.') is > 0 and var at ? level[..at] : "")
        {
            if (_before.Contains(level.Length == 0 ? name : $"{level}.{name}")) return true;
            if (level.Length == 0) return false;
        }
    }

    private void Report(Dependency dependency)
    {
        var near = Nearest.Of(dependency.Name, _before);
        report.Add(SequenceCodes.UnknownDependency, dependency.Place, $"no {Shown.Quoted(dependency.Name)} stands before it", near is null ? null : $"did you mean '{near}'?");
    }
}
