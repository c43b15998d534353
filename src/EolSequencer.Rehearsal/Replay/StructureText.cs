using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Source;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>
/// What a part of a checked sequence says, as text: two revisions say the same where the texts are the same. Everything the
/// part has goes in, so that what is added to the language later is compared too; only where it stands does not.
/// </summary>
internal sealed partial class StructureText(Arguments arguments)
{
    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> Known = [];

    private readonly StringBuilder _text = new();

    /// <param name="arguments">Loop names and parameters in force; a name is compared by its value.</param>
    public static string Of(Arguments arguments, params ReadOnlySpan<object?> parts)
    {
        var text = new StructureText(arguments);
        foreach (var part in parts) text.Add(part);
        return text._text.ToString();
    }

    private void Add(object? part)
    {
        switch (part)
        {
            case null: _text.Append("- "); break;
            case string text: _text.Append('"').Append(text).Append("\" "); break;
            case Expression expression: Add(expression); break;
            case IndexUse.Named named: _text.Append(arguments.Find(named.Name)?.ToString() ?? named.Name).Append(' '); break;
            case Value value: _text.Append(value.Kind).Append(':').Append(value).Append(' '); break;
            case Unit unit: _text.Append(unit.Symbol).Append(' '); break;
            case SourcePlace or Regex: break;
            case Enum or bool: _text.Append(part).Append(' '); break;
            case IFormattable number: _text.Append(number.ToString(null, CultureInfo.InvariantCulture)).Append(' '); break;
            case IDictionary map: AddMap(map); break;
            case IEnumerable list: AddList(list); break;
            default: AddMembers(part); break;
        }
    }

    private void Add(Expression expression)
    {
        _text.Append('(').Append(expression.Text);
        foreach (var name in Names().EnumerateMatches(expression.Text))
        {
            var word = expression.Text.Substring(name.Index, name.Length);
            if (arguments.Find(word) is { } value) _text.Append(' ').Append(word).Append('=').Append(value);
        }

        _text.Append(") ");
    }

    private void AddMap(IDictionary map)
    {
        foreach (var key in map.Keys.Cast<object>().OrderBy(key => key.ToString(), StringComparer.Ordinal))
        {
            Add(key);
            Add(map[key]);
        }
    }

    private void AddList(IEnumerable list)
    {
        _text.Append('[');
        if (!IsUnset(list))
        {
            foreach (var item in list) Add(item);
        }

        _text.Append("] ");
    }

    private void AddMembers(object part)
    {
        _text.Append(part.GetType().Name).Append('{');
        foreach (var member in Known.GetOrAdd(part.GetType(), static type =>
            [.. type.GetProperties(BindingFlags.Instance | BindingFlags.Public).Where(member => member.GetIndexParameters().Length == 0).OrderBy(member => member.Name, StringComparer.Ordinal)]))
        {
            Add(member.GetValue(part));
        }

        _text.Append("} ");
    }

    // An immutable array that was never set cannot be walked.
    private static bool IsUnset(IEnumerable list) => list.GetType().GetProperty("IsDefault")?.GetValue(list) is true;

    [GeneratedRegex(@"[\p{L}_][\p{L}\p{Nd}_]*", RegexOptions.CultureInvariant)]
    private static partial Regex Names();
}
