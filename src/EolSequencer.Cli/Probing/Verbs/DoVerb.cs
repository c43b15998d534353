using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;

namespace EolSequencer.Cli.Probing.Verbs;

/// <summary><c>do</c>: an action of a device; one that moves, energises or heats is confirmed first.</summary>
internal sealed class DoVerb(ProbeBench bench, ProbeScreen screen, TypedLines lines) : IVerb
{
    public string Word => "do";

    public IReadOnlyList<(string Form, string Meaning)> Forms =>
    [
        ("do ACTION", "an action; what moves, energises or heats asks first"),
        ("do ACTION to VALUE", "sets it, such as  do bus.blower to 80 %"),
        ("do ACTION with NAME VALUE, NAME VALUE", "with the values it wants"),
    ];

    /// <summary>Actions that were confirmed and may still be going on.</summary>
    public IReadOnlyCollection<string> Risky => _risky;

    private readonly HashSet<string> _risky = new(StringComparer.Ordinal);

    public async Task RunAsync(string rest, ProbeTurn turn)
    {
        var parts = rest.Split(' ', 3, StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length == 0) throw new ProbeTrouble("write  do ACTION, such as  do bus.extended_session; 'list' shows all");
        var (role, action, index) = bench.Action(parts[0]);
        var name = ChannelUse.NameOf(role, action.Name, index);
        if (!bench.Has(action.When)) throw new ProbeTrouble($"{name}: this vehicle does not have it");
        var request = Request(name, action, index, parts);
        if (RiskOf(action) is { } risk)
        {
            if (!await ConfirmedAsync(name, risk, turn)) return;
            _risky.Add(name);
        }

        screen.Write($"{name}: {ReadingText.Of(await bench.Device(role).ActAsync(request, turn.Stopping))}");
    }

    private static ActionRequest Request(string name, ActionDescription action, string? index, string[] parts)
    {
        var behind = parts.Length == 3 ? parts[2] : "";
        if (action.To is { } shape)
        {
            return parts.Length == 3 && parts[1] == "to"
                ? new ActionRequest(action, index, ActionValue.Parse(behind, shape), new Dictionary<string, Value>())
                : throw new ProbeTrouble($"{name} is set: write  do {name} to VALUE  ({shape})");
        }

        if (parts.Length > 1 && parts[1] != "with") throw new ProbeTrouble($"{name} is done, not set{(action.Parameters.IsEmpty ? "" : $": write  do {name} with {string.Join(", ", action.Parameters.Select(one => $"{one.Name} VALUE"))}")}");
        return new ActionRequest(action, index, null, With(name, action, behind));
    }

    private static Dictionary<string, Value> With(string name, ActionDescription action, string text)
    {
        var values = new Dictionary<string, Value>(StringComparer.Ordinal);
        foreach (var pair in text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var parts = pair.Split(' ', 2, StringSplitOptions.TrimEntries);
            var wanted = action.Parameters.FirstOrDefault(one => one.Name == parts[0]) ?? throw new ProbeTrouble($"{name} takes no '{parts[0]}'");
            values[wanted.Name] = ActionValue.Parse(parts.Length == 2 ? parts[1] : "", wanted.Shape);
        }

        var missing = action.Parameters.Where(one => !values.ContainsKey(one.Name)).Select(one => $"{one.Name} ({one.Shape})").ToList();
        return missing.Count == 0 ? values : throw new ProbeTrouble($"{name} wants {string.Join(", ", missing)}");
    }

    private static string? RiskOf(ActionDescription action)
    {
        string?[] risks = [action.Moves ? "moves something" : null, action.Energises ? "switches voltage on" : null, action.Heats ? "heats something" : null];
        return risks.Any(risk => risk is not null) ? string.Join(", ", risks.OfType<string>()) : null;
    }

    private async Task<bool> ConfirmedAsync(string name, string risk, ProbeTurn turn)
    {
        screen.Write($"CAUTION: {name} {risk}. Nobody in reach, guards closed, emergency stop at hand. Site rules and licensed practice come first; this program is no safety function.");
        screen.Write("type yes to go on, anything else leaves it");
        if (await lines.NextAsync(turn.Asked) is { } answer && answer.Trim() == "yes") return true;
        screen.Write($"{name}: left alone");
        return false;
    }
}
