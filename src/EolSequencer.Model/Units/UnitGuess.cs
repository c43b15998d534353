using System.Collections.Immutable;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Units;

/// <summary>What an author may have meant by a spelling that the unit table does not hold.</summary>
internal static class UnitGuess
{
    /// <summary>Spellings that are common and wrong here, each with its own advice.</summary>
    private static readonly Dictionary<string, (string[] Candidates, string Hint)> Known = new(StringComparer.Ordinal)
    {
        ["C"] = (["°C"], "C alone is the coulomb; write °C or degC for a temperature"),
        ["F"] = (["°F"], "F alone is the farad; write °F or degF for a temperature"),
        ["pt"] = ([], "pt is a point of type, a pint and a point of a scale; the unit table has none of them"),
        ["kmh"] = (["km/h"], "write km/h"),
        ["kph"] = (["km/h"], "write km/h"),
        ["rev/min"] = (["rpm"], "write rpm for a shaft, 1/min for any other count per minute"),
        ["U/min"] = (["rpm"], "write rpm for a shaft, 1/min for any other count per minute"),
        ["sec"] = (["s"], "write s"),
        ["kgm"] = (["kg", "N·m"], "write kg for a mass, N·m for a torque"),
        ["\""] = (["in"], "write in"),
        ["mPa"] = (["MPa"], "mPa is a thousandth of a pascal and not in the unit table; write MPa for a million pascals"),
    };

    /// <summary>Characters that look like the right one on the screen.</summary>
    private static readonly (char Wrong, char Right, string Name)[] LookAlikes =
    [
        ('\u00BA', '°', "U+00BA, the ordinal mark"),
        ('\u02DA', '°', "U+02DA, the ring"),
        ('\u2019', '\'', "U+2019, the closing quote"),
        ('\u2215', '/', "U+2215, the division slash"),
        ('\u2044', '/', "U+2044, the fraction slash"),
        ('\u2022', '·', "U+2022, the bullet"),
        ('*', '·', "the asterisk"),
        ('\u00A0', ' ', "U+00A0, the fixed space"),
    ];

    public static UnitLookup.Unknown For(string text) =>
        text.Length == 0 ? new UnitLookup.Unknown(text, [], "there is no unit here")
        : Known.TryGetValue(text, out var known) ? new UnitLookup.Unknown(text, [.. known.Candidates], known.Hint)
        : LookAlike(text) ?? ByCase(text) ?? Nearest(text);

    private static UnitLookup.Unknown? LookAlike(string text)
    {
        foreach (var (wrong, right, name) in LookAlikes)
        {
            if (text.Contains(wrong) && UnitTable.Exact(text.Replace(wrong, right)) is { } unit)
            {
                return new UnitLookup.Unknown(text, [unit.Symbol], $"it holds {name}; write {unit.Symbol}");
            }
        }

        return null;
    }

    /// <summary>Only the case differs. Milli and mega differ in nothing else, so both readings are named.</summary>
    private static UnitLookup.Unknown? ByCase(string text)
    {
        var alike = UnitTable.All
            .Where(unit => unit.OtherSpellings.Prepend(unit.Symbol).Any(spelling => spelling.Equals(text, StringComparison.OrdinalIgnoreCase)))
            .Select(unit => unit.Symbol)
            .ToList();
        if (alike.Count == 0)
        {
            return null;
        }

        // A prefix stands in front of a unit of the same dimension: mA has one, m and min have none.
        foreach (var symbol in alike.ToArray())
        {
            if (symbol[0] is 'm' or 'M' && UnitTable.Exact(symbol[1..])?.Dimension == UnitTable.Exact(symbol)!.Dimension)
            {
                var other = (symbol[0] == 'm' ? 'M' : 'm') + symbol[1..];
                if (!alike.Contains(other)) alike.Add(other);
            }
        }

        return new UnitLookup.Unknown(text, [.. alike], alike.Count == 1
            ? $"case counts: write {alike[0]}"
            : $"case counts: {string.Join(" or ", alike.Select(Explained))}?");
    }

    private static string Explained(string symbol) => symbol[0] switch
    {
        'm' => $"{symbol} (milli)",
        'M' => $"{symbol} (mega)",
        _ => symbol,
    } + (UnitTable.Exact(symbol) is not null ? "" : ", which the unit table does not hold");

    private static UnitLookup.Unknown Nearest(string text)
    {
        var near = UnitTable.All
            .Select(unit => (unit.Symbol, Steps: unit.OtherSpellings.Prepend(unit.Symbol).Min(spelling => EditDistance.Between(spelling, text))))
            .Where(candidate => candidate.Steps <= (text.Length <= 2 ? 1 : 2) && candidate.Steps < text.Length)
            .OrderBy(candidate => candidate.Steps)
            .Take(3)
            .Select(candidate => candidate.Symbol)
            .ToImmutableArray();
        return new UnitLookup.Unknown(text, near, near.IsEmpty
            ? "the unit table has nothing like it; the language reference lists all units"
            : $"did you mean {string.Join(", ", near)}?");
    }
}
