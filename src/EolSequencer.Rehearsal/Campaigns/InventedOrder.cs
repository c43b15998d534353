using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>
/// Orders that nobody has placed, for rehearsing combinations of options that no order of the plant has. The same number
/// and options give the same order.
/// </summary>
public static class InventedOrder
{
    // GF is no manufacturer's (ISO 3780; from memory), so a number of these meets no vehicle.
    private const string VinStart = "GFVREHRS0VF";
    private const int CheckPosition = 8;
    private const int UsualTextLength = 8;

    /// <summary>The order of a vehicle of a type.</summary>
    /// <param name="type">A type whose expressions are compiled.</param>
    /// <param name="options">The word for every option; <c>yes</c> or <c>no</c> for truth values. What is no option but a fact of the order is taken as that.</param>
    /// <param name="number">Tells vehicles of one campaign apart, from 0.</param>
    public static Order Of(VehicleType type, IReadOnlyDictionary<string, string> options, int number)
    {
        var chosen = type.Options.ToImmutableSortedDictionary(
            option => option.Name, option => ValueOf(option.Shape, options[option.Name]), StringComparer.Ordinal);
        var bare = new Order(
            string.Create(CultureInfo.InvariantCulture, $"REHEARSAL-{number:000000}"), VinOf(type, number), type.Id, chosen, ImmutableSortedDictionary<string, Value>.Empty);
        return bare with { Facts = FactsOf(type, options, bare, number) };
    }

    private static ImmutableSortedDictionary<string, Value> FactsOf(VehicleType type, IReadOnlyDictionary<string, string> options, Order bare, int number)
    {
        var facts = ImmutableSortedDictionary.CreateBuilder<string, Value>(StringComparer.Ordinal);
        foreach (var fact in type.OrderFacts)
        {
            if (fact.Indexes.IsEmpty) facts[fact.Name] = options.GetValueOrDefault($"order.{fact.Name}") is { } word ? ValueOf(fact.Shape, word) : Invented(fact, 0, number);
            for (var at = 0; at < fact.Indexes.Length; at++)
            {
                var index = fact.Indexes[at];
                if (index.When is null || IsFitted(index.When, bare)) facts[$"{fact.Name}[{index.Value}]"] = Invented(fact, at, number);
            }
        }

        return facts.ToImmutable();
    }

    // What depends on a fact of the order itself counts as fitted: the fact is then wanted.
    private static bool IsFitted(Expression when, Order bare)
    {
        try
        {
            return OrderScope.IsTrue(when, bare);
        }
        catch (ExpressionFault)
        {
            return true;
        }
    }

    private static Value Invented(OrderFact fact, int index, int number) => fact.Shape switch
    {
        { Kind: ValueKind.Text, Choices: [var first, ..] } => new TextValue(first),
        { Kind: ValueKind.Text } => new TextValue(TextOf(fact, index, number)),
        { Kind: ValueKind.Truth } => TruthValue.No,
        { Kind: ValueKind.List } => new ListValue([]),
        var shape => new NumberValue(1 + index, shape.Unit),
    };

    private static string TextOf(OrderFact fact, int index, int number)
    {
        var length = fact.Shape.MaxLength ?? UsualTextLength;
        var digits = string.Create(CultureInfo.InvariantCulture, $"{number % 10000:0000}{index % 100:00}");
        var text = $"{fact.Name[..1].ToUpperInvariant()}{digits}".PadRight(length, 'R');
        return text[..length];
    }

    private static Value ValueOf(ValueShape shape, string word) => shape.Kind == ValueKind.Truth ? TruthValue.Of(word == "yes") : new TextValue(word);

    private static Vin VinOf(VehicleType type, int number)
    {
        var text = string.Create(CultureInfo.InvariantCulture, $"{VinStart}{number:000000}");
        if (type.CheckDigit != CheckDigitRule.Off) text = $"{text[..CheckPosition]}{Vin.ComputeCheckDigit(text)}{text[(CheckPosition + 1)..]}";
        return Vin.TryParse(text, type.CheckDigit).Vin ?? throw new InvalidOperationException($"'{text}' is no vehicle identification number");
    }
}
