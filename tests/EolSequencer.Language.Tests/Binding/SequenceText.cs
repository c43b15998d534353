using System.Text;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>A checked sequence as text, so that a change of what binding makes of a document is read in the diff.</summary>
internal static class SequenceText
{
    public static string Of(CheckedSequence sequence)
    {
        var text = new StringBuilder();
        text.Append($"sequence {sequence.Id} revision {sequence.Revision} of {sequence.VehicleType.Id} at {sequence.StationKind}\n");
        foreach (var role in sequence.Roles) text.Append($"device {role.Role}: {role.Kind.Id}\n");
        Section(text, "prepare", sequence.Prepare);
        Section(text, "steps", sequence.Steps);
        Section(text, "always", sequence.Always);
        Section(text, "after-verdict", sequence.AfterVerdict);
        return text.ToString();
    }

    private static void Section(StringBuilder text, string name, IEnumerable<Node> nodes)
    {
        if (!nodes.Any()) return;
        text.Append($"{name}\n");
        foreach (var node in nodes) Write(text, node, "  ");
    }

    private static void Write(StringBuilder text, Node node, string indent)
    {
        var inner = indent + "  ";
        text.Append($"{indent}{node.GetType().Name.ToLowerInvariant()} {node.Id} (line {node.Place.Line})\n");
        Line(text, inner, "when", node.When);
        Line(text, inner, "only-if", node.OnlyIf);
        Line(text, inner, "require", node.Require is { } require ? $"{require.That}{(require.ElseStop ? ", else stop" : "")}" : null);
        Line(text, inner, "retry", node.Retry is { } retry ? $"{retry.Times} on {string.Join("/", retry.On)} after {retry.Pause}" : null);
        Line(text, inner, "caution", node.Caution);
        Line(text, inner, "place", node.OperatorPlace);
        if (node is Step step) Write(text, step, inner);
        if (node is Group group) Write(text, group, inner);
    }

    private static void Write(StringBuilder text, Group group, string indent)
    {
        foreach (var loop in group.Each) Line(text, indent, "each " + loop.Name, string.Join(", ", loop.Values.Select(value => value.Value)));
        Line(text, indent, "capture", group.Capture is { } capture ? string.Join(", ", capture.Channels.Select(one => $"{one.Channel}{(one.Every is { } every ? $" every {every}" : "")}")) : null);
        Line(text, indent, "use", group.Fragment);
        foreach (var argument in group.Arguments) Line(text, indent, "with " + argument.Name, argument.Value);
        foreach (var child in group.Children) Write(text, child, indent);
    }

    private static void Write(StringBuilder text, Step step, string indent)
    {
        Line(text, indent, step.Action.GetType().Name.ToLowerInvariant(), step.Action switch
        {
            StepAction.Ask ask => $"{ask.Text} until {ask.Until?.Text ?? "confirmed"}",
            StepAction.Read read => $"{read.Channel}, {read.Description.Shape}",
            StepAction.Do act => $"{act.Role}.{act.Target.Name}",
            StepAction.Compute compute => $"{compute.Expression}, unit {compute.Unit}, channels [{string.Join(", ", compute.Expression.Channels)}], results {compute.Expression.Results.Length}",
            var other => other,
        });
        Line(text, indent, "show", step.Show);
        Line(text, indent, "within", step.Within);
        Line(text, indent, "expect", Expect(step.Expect));
        Line(text, indent, "takes", Expect(step.Takes));
        Line(text, indent, "class", step.Class);
    }

    private static string? Expect(Expectation? expect) => expect switch
    {
        null => null,
        Expectation.Within window => $"{window.Low} .. {window.High}",
        Expectation.ByIndex windows => $"limits.{windows.Name}[{Index(windows.Index)}] " + string.Join("; ", windows.Windows.OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => $"{one.Key}: {Expect(one.Value)}")),
        Expectation.ByVehicle rows => $"limits.{rows.Name} " + string.Join("; ", rows.Rows.Select(row => $"{row.When}: {Expect(row.Is)}")),
        _ => expect.ToString(),
    };

    private static string Index(IndexUse? index) => index switch
    {
        IndexUse.Fixed one => one.Value,
        IndexUse.Named name => "name " + name.Name,
        _ => "as read",
    };

    private static void Line(StringBuilder text, string indent, string name, object? value)
    {
        if (value is not null) text.Append($"{indent}{name}: {value}\n");
    }
}
