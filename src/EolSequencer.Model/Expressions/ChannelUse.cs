namespace EolSequencer.Model.Expressions;

/// <summary>A channel as a step or an expression names it.</summary>
/// <param name="Role">The device role of the sequence, such as <c>bus</c>.</param>
/// <param name="Channel">The channel of that device's kind.</param>
/// <param name="Index">Which value of an indexed channel; null means the channel has none, or all of them.</param>
public sealed record ChannelUse(string Role, string Channel, IndexUse? Index)
{
    private readonly string _whole = $"{Role}.{Channel}";
    private readonly string _text = Index switch
    {
        IndexUse.Fixed one => $"{Role}.{Channel}[{one.Value}]",
        IndexUse.Named name => $"{Role}.{Channel}[{name.Name}]",
        _ => $"{Role}.{Channel}",
    };

    /// <summary>The channel of one instance of a loop: <c>bus.door_ajar[rear]</c>.</summary>
    /// <param name="arguments">Loop names and parameters in force.</param>
    public string Resolve(Arguments arguments) => TextOf(Index?.Resolve(arguments));

    /// <summary>How records name one value of a channel; without an index when it has none.</summary>
    public static string NameOf(string role, string channel, string? index) => index is null ? $"{role}.{channel}" : $"{role}.{channel}[{index}]";

    /// <summary>With the index it has in a loop: <c>bus.door_ajar[fl]</c>.</summary>
    /// <param name="index">Null: the channel has none.</param>
    public string TextOf(string? index) => index is null ? _whole : Index is IndexUse.Fixed ? _text : $"{_whole}[{index}]";

    /// <summary>As an author writes it: <c>bus.door_ajar[door]</c>.</summary>
    public override string ToString() => _text;
}
