using System.Collections.Immutable;
using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Orders;

/// <summary>Reads the facts of an order: all that the type names, and of indexed ones those of what is fitted.</summary>
internal sealed class FactReader(VehicleType type, ImmutableSortedDictionary<string, Value> options, Report report)
{
    private readonly VehicleScope _scope = new(options, Arguments.None);
    private readonly ImmutableSortedDictionary<string, Value>.Builder _values = ImmutableSortedDictionary.CreateBuilder<string, Value>(StringComparer.Ordinal);
    private bool _isWhole = true;

    /// <summary>The facts, indexed ones as <c>name[index]</c>; null: already reported.</summary>
    public ImmutableSortedDictionary<string, Value>? Read(MapReader keys)
    {
        var map = keys.FreeMap("facts");
        foreach (var (key, _) in map?.Entries ?? [])
        {
            if (type.OrderFacts.Any(fact => fact.Name == key.Text)) continue;
            var near = Nearest.Of(key.Text, type.OrderFacts.Select(fact => fact.Name));
            Fault(OrderCodes.UnknownFact, key, $"orders of '{type.Id}' have no fact {Shown.Quoted(key.Text)}", near is null ? null : $"did you mean '{near}'?");
        }

        foreach (var fact in type.OrderFacts)
        {
            if (map?.Find(fact.Name) is { } entry) Read(fact, entry);
            else if (fact.Indexes.IsEmpty || fact.Indexes.Any(IsFitted)) Missing(keys, fact.Name);
        }

        return _isWhole ? _values.ToImmutable() : null;
    }

    private void Read(OrderFact fact, YamlEntry entry)
    {
        if (fact.Indexes.IsEmpty)
        {
            Take(fact.Name, fact, entry.Value);
            return;
        }

        if (entry.Value.AsMap($"the fact '{fact.Name}'", report) is not { } map)
        {
            _isWhole = false;
            return;
        }

        foreach (var (key, value) in map.Entries)
        {
            if (fact.Indexes.FirstOrDefault(index => index.Value == key.Text) is not { } index)
            {
                var near = Nearest.Of(key.Text, fact.Indexes.Select(known => known.Value));
                Fault(OrderCodes.UnknownFact, key, $"'{fact.Name}' has no {Shown.Quoted(key.Text)}", near is null ? null : $"did you mean '{near}'?");
            }
            else if (!IsFitted(index))
            {
                Fault(OrderCodes.NotFitted, key, $"this vehicle has no '{key.Text}'", null);
            }
            else
            {
                Take($"{fact.Name}[{key.Text}]", fact, value);
            }
        }

        foreach (var index in fact.Indexes.Where(index => IsFitted(index) && map.Find(index.Value) is null))
        {
            Fault(OrderCodes.MissingFact, entry.Key, $"'{fact.Name}' says nothing about '{index.Value}'", null);
        }
    }

    private void Take(string name, OrderFact fact, YamlNode node)
    {
        if (WrittenValue.Read(node, $"'{name}'", fact.Shape, report) is { } value) _values[name] = value;
        else _isWhole = false;
    }

    // A unit that depends on a fact of the order itself counts as fitted: the fact is then wanted.
    private bool IsFitted(IndexValue index)
    {
        try
        {
            return index.When is null || index.When.IsTrue(_scope);
        }
        catch (Undecided)
        {
            return true;
        }
    }

    private void Missing(MapReader keys, string name)
    {
        report.Add(OrderCodes.MissingFact, keys.PlaceOf("facts"), $"'{name}' is not said");
        _isWhole = false;
    }

    private void Fault(DiagnosticCode code, YamlScalar at, string found, string? hint)
    {
        report.Add(code, at.Place, found, hint);
        _isWhole = false;
    }
}
