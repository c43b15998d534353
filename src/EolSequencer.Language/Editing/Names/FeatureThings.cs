using System.Reflection;
using EolSequencer.Language.Expressions.Compiling;
using EolSequencer.Language.Expressions.Support;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Editing.Names;

/// <summary>The features of a trace by the shape of its channel, each with the meaning that stands beside its code.</summary>
internal static class FeatureThings
{
    private static readonly ValueShape Frequency = ValueShape.Number(UnitTable.Required("1/min"));

    public static IEnumerable<Thing> Of(ValueShape shape) => shape switch
    {
        { Kind: ValueKind.Truth } => Features(typeof(SwitchTrace<,>), shape),
        { Kind: ValueKind.Number or ValueKind.Time, Unit: null } => Features(typeof(NumberTrace<,>), shape),
        { Kind: ValueKind.Number or ValueKind.Time } =>
        [
            .. Features(typeof(QuantityTrace<,>), shape),
            .. DeviceThings.UnitsOf(shape).Select(unit => unit with { Parts = () => Features(typeof(NumberTrace<,>), shape) }),
        ],
        _ => [],
    };

    private static IEnumerable<Thing> Features(Type trace, ValueShape shape) => TraceFeatures.Members(trace).GroupBy(member => member.Name).Select(forms => new Thing(
        forms.Key, ProposalKind.Function, Meaning(forms.First()))
    {
        Text = string.Join('\n', forms.Select(form => $"{Written(form)}: {Meaning(form)}")),
        Parts = () => Behind(forms.First(), shape),
    });

    private static string Meaning(MemberInfo member) => member.GetCustomAttribute<MeansAttribute>()!.Text;

    private static string Written(MemberInfo member) =>
        member is MethodInfo method ? $".{method.Name}({string.Join(", ", method.GetParameters().Select(parameter => parameter.Name))})" : $".{member.Name}";

    private static IEnumerable<Thing> Behind(MemberInfo member, ValueShape shape) => (member as PropertyInfo)?.PropertyType.Name switch
    {
        "TValue" => DeviceThings.UnitsOf(shape),
        "TTime" => DeviceThings.UnitsOf(ValueShape.Time),
        "TFrequency" => DeviceThings.UnitsOf(Frequency),
        _ => [],
    };
}
