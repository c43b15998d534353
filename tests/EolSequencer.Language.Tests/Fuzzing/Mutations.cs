using CsCheck;

namespace EolSequencer.Language.Tests.Fuzzing;

/// <summary>Slips of a hand, and worse, in texts that were good.</summary>
internal static class Mutations
{
    private static readonly string[] Morsels =
    [
        "'", "\"", "[", "]", "{", "}", "(", ")", ":", ": ", ",", " #", "#", "- ", "? ", "!", "&a ", "*a", "|", ">", "%", "@", "`", "\\", "\\x4", "\t", "\n", "\r", "\r\n",
        "\n\n", "  ", "\u00A0", "\uFEFF", "\u2028", "\u0000", "\u0007", "---\n", "...\n", "<<: ", "~", "null", "😀", "−", "º", "×", "±", "..", "0x", "1e999", "-0", "99999999999999999999999999999",
        "yes", "limits.", "bus.", "results.", "vehicle.", "when: ", "each: ", "equals ", "one of [", "matches /", "/", "5 s", "V", "km/h", "(vehicle.vin)",
    ];

    private static readonly Gen<(int Kind, int At, int Length, string Morsel)> Change = Gen.Select(Gen.Int[0, 6], Gen.Int[0, int.MaxValue], Gen.Int[0, 40], Gen.OneOf(Morsels));

    /// <summary>One of some good texts with one to five changes.</summary>
    public static Gen<string> Of(params string[] good) =>
        Gen.Select(Gen.OneOf(good), Change.Array[1, 5]).Select((text, changes) => changes.Aggregate(text, Changed));

    /// <summary>A piece of one of some files, of at most so many lines, with one to five changes.</summary>
    public static Gen<string> OfPieces(IEnumerable<string> files, int lines)
    {
        var all = files.Select(text => text.Split('\n')).ToArray();
        return Gen.Select(Gen.OneOf(all), Gen.Int[0, int.MaxValue], Gen.Int[1, lines], Change.Array[1, 5])
            .Select((file, from, length, changes) => changes.Aggregate(string.Join('\n', file.Skip(from % file.Length).Take(length)), Changed));
    }

    private static string Changed(string text, (int Kind, int At, int Length, string Morsel) change)
    {
        var at = change.At % (text.Length + 1);
        var length = Math.Min(change.Length, text.Length - at);
        return change.Kind switch
        {
            0 => text.Remove(at, length),
            1 => text.Insert(at, change.Morsel),
            2 => text.Remove(at, Math.Min(1, length)).Insert(at, change.Morsel),
            3 => text.Insert(at, text.Substring(at, length)),
            4 => text[..at],
            5 => text.Remove(at, Math.Min(1, length)).Insert(at, ((char)(change.At % 0x2100)).ToString()),
            _ => text.Remove(at, length).Insert(change.Length % (text.Length - length + 1), text.Substring(at, length)),
        };
    }
}
