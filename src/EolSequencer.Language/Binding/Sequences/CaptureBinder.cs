using System.Collections.Immutable;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads <c>capture: [bus.gear]</c> and <c>capture: { channels: [bus.gear], every: 20 ms }</c>.</summary>
internal static class CaptureBinder
{
    private static readonly ValueForm Captured = Forms.List(Forms.Named(Subject.Channel));

    private static readonly MapShape Shape = new(
        "a capture",
        [new("channels", Captured, "what is captured")],
        [new("every", Forms.Duration(TimeSpan.FromMilliseconds(1), TimeSpan.FromHours(1)), "how often; every reading if nothing is said")]);

    /// <summary>What a capture looks like.</summary>
    public static ValueForm Form { get; } = Forms.Either(Captured, Forms.Map(Shape));

    public static Capture? Bind(MapReader keys, Scope scope)
    {
        if (keys.Find("capture") is not { } node) return null;
        if (node is YamlList) return Channels(keys.List("capture"), scope) is { IsEmpty: false } all ? new Capture(all, null) : null;
        if (MapReader.Open(node, Shape, scope.Report) is not { } inner) return null;
        var every = inner.Duration("every");
        return Channels(inner.List("channels"), scope) is { IsEmpty: false } some ? new Capture(some, every) : null;
    }

    private static ImmutableArray<ChannelUse> Channels(IReadOnlyList<YamlNode> items, Scope scope) =>
    [
        .. items
            .Select(item => item.AsText("a captured channel", scope.Report))
            .OfType<YamlScalar>()
            .Select(text => ChannelReference.Channel(ScalarPart.Whole(text), scope)?.Use)
            .OfType<ChannelUse>(),
    ];
}
