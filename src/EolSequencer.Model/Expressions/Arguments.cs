using EolSequencer.Model.Values;

namespace EolSequencer.Model.Expressions;

/// <summary>Loop names and parameters in force at one place of a plan. Immutable; a short list beats a dictionary here.</summary>
public sealed class Arguments
{
    /// <summary>Nothing in force.</summary>
    public static Arguments None { get; } = new(null, "", null!);

    private readonly Arguments? _outer;
    private readonly string _name;
    private readonly Value _value;

    private Arguments(Arguments? outer, string name, Value value)
    {
        _outer = outer;
        _name = name;
        _value = value;
    }

    /// <summary>The same with one more name; an inner name hides an outer one.</summary>
    public Arguments With(string name, Value value) => new(this, name, value);

    /// <summary>The value of a name, or null when no such name is in force.</summary>
    public Value? Find(string name)
    {
        for (var at = this; at is not null; at = at._outer)
        {
            if (at._outer is not null && at._name == name) return at._value;
        }

        return null;
    }

    /// <summary>The value of a name that the checker has proven to be in force.</summary>
    public Value this[string name] =>
        Find(name) ?? throw new InvalidOperationException($"no loop name or parameter '{name}' is in force here");

    /// <summary>The text of a name; a loop value or a choice.</summary>
    public string Text(string name) => this[name] is TextValue text ? text.Text : this[name].ToString()!;
}
