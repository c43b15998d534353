using System.Collections.Immutable;
using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Values;

namespace EolSequencer.Devices.Tests.Adapters;

/// <summary>A device that lacks what sequences may ask of it is found before a run, not in the middle of one.</summary>
public class DeviceOfferTests
{
    private static readonly DeviceOffer Offer = new([new("voltage"), new("current", TimeSpan.FromMilliseconds(200))], ["zero"]);

    [Fact]
    public void What_is_offered_fits() => Assert.Null(Offer.Misfit(Kind(["zero"], ("voltage", null), ("current", 200))));

    [Fact]
    public void A_channel_that_is_not_offered_is_told_with_those_that_are() =>
        Assert.Contains("the channel 'power', which is not offered here; offered are current, voltage", Offer.Misfit(Kind([], ("power", null))), StringComparison.Ordinal);

    [Fact]
    public void An_action_that_is_not_offered_is_told() =>
        Assert.Contains("the action 'start'", Offer.Misfit(Kind(["start"])), StringComparison.Ordinal);

    [Fact]
    public void Polling_faster_than_new_values_come_is_told_with_both_times() =>
        Assert.Contains("polls current every 100 ms, a new value takes 200 ms", Offer.Misfit(Kind([], ("current", 100))), StringComparison.Ordinal);

    private static DeviceKind Kind(string[] actions, params (string Name, int? EveryMs)[] channels) => new(
        "meter",
        false,
        channels.ToImmutableSortedDictionary(
            one => one.Name,
            one => new ChannelDescription { Name = one.Name, Shape = ValueShape.Count, Every = one.EveryMs is { } ms ? TimeSpan.FromMilliseconds(ms) : null }),
        actions.ToImmutableSortedDictionary(name => name, name => new ActionDescription { Name = name }));
}
