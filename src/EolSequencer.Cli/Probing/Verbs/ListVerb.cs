using EolSequencer.Model.Devices;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Cli.Probing.Verbs;

/// <summary><c>list</c>: devices, channels and actions.</summary>
internal sealed class ListVerb(ProbeBench bench, ProbeScreen screen) : IVerb
{
    public string Word => "list";

    public IReadOnlyList<(string Form, string Meaning)> Forms => [("list [TEXT]", "devices, channels and actions, those with the text in them")];

    public Task RunAsync(string rest, ProbeTurn turn)
    {
        var shown = bench.Roles.SelectMany(Lines).Where(line => line.Contains(rest.Trim(), StringComparison.OrdinalIgnoreCase)).ToList();
        foreach (var line in shown) screen.Write(line);
        return shown.Count > 0 ? Task.CompletedTask : throw new ProbeTrouble($"nothing has '{rest.Trim()}' in it");
    }

    private IEnumerable<string> Lines(DeviceRole role)
    {
        yield return $"device {role.Role}: {role.Kind.Id}";
        foreach (var channel in role.Kind.Channels.Values) yield return $"  channel {role.Role}.{channel.Name}{Index(channel.Indexes)}: {channel.Shape}{Source(SourceWords.Of(channel))}{(channel.IsEvent ? "; results come once" : "")}{Missing(channel.When)}";
        foreach (var action in role.Kind.Actions.Values) yield return $"  action {role.Role}.{action.Name}{Index(action.Indexes)}: {Doing(action)}{Source(SourceWords.Of(action))}{Risk(action)}{Missing(action.When)}";
    }

    private string Index(System.Collections.Immutable.ImmutableArray<IndexValue> indexes) => indexes.IsEmpty ? "" : $"[{string.Join('|', bench.Fitted(indexes))}]";

    private string Missing(Model.Expressions.Expression? when) => bench.Has(when) ? "" : "; this vehicle does not have it";

    private static string Source(string? source) => source is null ? "" : $"; {source}";

    private static string Doing(ActionDescription action) => action switch
    {
        { To: { } to } => $"is set to {to}",
        { Parameters: { IsEmpty: false } with } => $"is done with {string.Join(", ", with.Select(one => $"{one.Name} ({one.Shape})"))}",
        _ => "is done",
    };

    private static string Risk(ActionDescription action) =>
        $"{(action.Moves ? "; moves" : "")}{(action.Energises ? "; energises" : "")}{(action.Heats ? "; heats" : "")}";
}
