using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>
/// Reads <c>capture: [bus.gear]</c>, <c>capture: { channels: [bus.gear], every: 20 ms }</c>, and an item with a rate of its own,
/// <c>{ channel: bus.gear, every: 20 ms }</c>.
/// </summary>
internal static class CaptureBinder
{
    private static readonly MapKey Every = new("every", Forms.Duration(TimeSpan.FromMilliseconds(1), TimeSpan.FromHours(1)), "how often; every reading if nothing is said");

    private static readonly MapShape Item = new(
        "a captured channel", [new("channel", Forms.Named(Subject.Channel), "what is captured")], [Every]);

    private static readonly ValueForm Captured = Forms.List(Forms.Either(Forms.Named(Subject.Channel), Forms.Map(Item)));

    private static readonly MapShape Shape = new("a capture", [new("channels", Captured, "what is captured")], [Every]);

    /// <summary>What a capture looks like.</summary>
    public static ValueForm Form { get; } = Forms.Either(Captured, Forms.Map(Shape));

    /// <summary>What a group keeps; null: nothing, or already reported.</summary>
    /// <param name="scope">What the indexes of channels may name.</param>
    public static Capture? Bind(MapReader keys, Scope scope)
    {
        if (keys.Find("capture") is not { } node) return null;
        if (node is YamlList) return Channels(keys.List("capture"), null, scope);
        return MapReader.Open(node, Shape, scope.Report) is { } inner ? Channels(inner.List("channels"), inner.Duration("every"), scope) : null;
    }

    private static Capture? Channels(IReadOnlyList<YamlNode> items, TimeSpan? every, Scope scope)
    {
        var found = ImmutableArray.CreateBuilder<CapturedChannel>(items.Count);
        foreach (var item in items)
        {
            if (Channel(item, every, scope) is not { } channel) continue;
            if (found.Any(other => other.Channel == channel.Channel)) scope.Report.Add(NameCodes.Twice, item.Place, $"'{channel.Channel}' is captured already");
            else found.Add(channel);
        }

        return found.Count == 0 ? null : new Capture(found.ToImmutable());
    }

    private static CapturedChannel? Channel(YamlNode item, TimeSpan? every, Scope scope)
    {
        if (item is YamlMap)
        {
            if (MapReader.Open(item, Item, scope.Report) is not { } keys || keys.Text("channel") is not { } named) return null;
            return Channel(named, keys.Duration("every") ?? every, scope);
        }

        return item.AsText("a captured channel", scope.Report) is { } text ? Channel(text, every, scope) : null;
    }

    private static CapturedChannel? Channel(YamlScalar text, TimeSpan? every, Scope scope) =>
        ChannelReference.Channel(ScalarPart.Whole(text), scope) is { } found ? new CapturedChannel(found.Use, found.Channel, every) : null;
}
