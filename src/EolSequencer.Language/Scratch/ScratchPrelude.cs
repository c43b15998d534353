using System.Text;
using EolSequencer.Language.Expressions.Compiling;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Scratch;

/// <summary>
/// The C# in front of all lines: a struct for each dimension with its units by name, an object for each device with its
/// channels, and each channel by its bare name where only one device has it.
/// </summary>
internal static class ScratchPrelude
{
    private const string Globals = "EolSequencer.Language.Scratch." + nameof(ScratchGlobals);

    public static string Of(IReadOnlyList<DeviceRole> roles)
    {
        var text = new StringBuilder();
        foreach (var name in new[] { "System", "System.Collections.Generic", "System.Linq", "EolSequencer.Language.Expressions.Support", "EolSequencer.Model.Units" })
        {
            text.Line($"using {name};");
        }

        text.Line("using static EolSequencer.Language.Expressions.Support.Functions;");
        var dimensions = roles.SelectMany(role => role.Kind.Channels.Values).Select(channel => channel.Shape.Unit?.Dimension).OfType<Model.Units.Dimension>().Distinct().Order();
        foreach (var dimension in dimensions) QuantityStruct.Write(dimension, text);
        foreach (var role in roles) WriteRole(role, text);
        WriteBareNames(roles, text);
        return text.ToString();
    }

    private static void WriteRole(DeviceRole role, StringBuilder text)
    {
        var type = $"_{role.Role}";
        text.Line($"public sealed class {type}({Globals} _g)");
        text.Line("{");
        foreach (var channel in role.Kind.Channels.Values)
        {
            var value = TypeOf(channel);
            if (channel.Indexes.IsEmpty)
            {
                text.Line($"    public {value} {channel.Name} => {Read(role.Role, channel, "null")};");
                continue;
            }

            text.Line($"    public sealed class _{channel.Name}({Globals} _g) {{ public {value} this[string index] => {Read(role.Role, channel, "index")}; }}");
            text.Line($"    public _{channel.Name} {channel.Name} => new(_g);");
        }

        text.Line("}");
        text.Line($"{type} {role.Role} = new({nameof(ScratchGlobals.Readings)});");
    }

    private static void WriteBareNames(IReadOnlyList<DeviceRole> roles, StringBuilder text)
    {
        var taken = roles.Select(role => role.Role).Concat(typeof(Expressions.Support.Functions).GetMethods().Select(method => method.Name)).ToHashSet(StringComparer.Ordinal);
        var named = roles.SelectMany(role => role.Kind.Channels.Values.Select(channel => (Role: role.Role, Channel: channel))).GroupBy(one => one.Channel.Name);
        foreach (var only in named.Where(group => group.Count() == 1 && !taken.Contains(group.Key)).Select(group => group.First()))
        {
            var type = only.Channel.Indexes.IsEmpty ? TypeOf(only.Channel) : $"_{only.Role}._{only.Channel.Name}";
            text.Line($"{type} {only.Channel.Name} => {only.Role}.{only.Channel.Name};");
        }
    }

    private static string TypeOf(ChannelDescription channel) => channel.Shape switch
    {
        { Unit: { } unit } => CodeText.Type(unit.Dimension),
        { Kind: ValueKind.Truth } => "bool",
        { Kind: ValueKind.Number or ValueKind.Time } => "decimal",
        { Kind: ValueKind.List } => "string[]",
        _ => "string",
    };

    private static string Read(string role, ChannelDescription channel, string index)
    {
        var asked = $"({CodeText.Literal(role)}, {CodeText.Literal(channel.Name)}, {index})";
        return "_g." + TypeOf(channel) switch
        {
            "bool" => nameof(ScratchGlobals.TruthOf) + asked,
            "decimal" => nameof(ScratchGlobals.CountOf) + asked,
            "string[]" => nameof(ScratchGlobals.ListOf) + asked,
            "string" => nameof(ScratchGlobals.TextOf) + asked,
            var quantity => $"{nameof(ScratchGlobals.QuantityOf)}<{quantity}>{asked}",
        };
    }
}
