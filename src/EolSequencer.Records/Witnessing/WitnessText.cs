using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Chain;

namespace EolSequencer.Records.Witnessing;

/// <summary>
/// A witness as text, one line a range: <c>FIRST..LAST HASH</c>. A line may also be a fingerprint from paper, <c>LAST 0123-4567-…</c>.
/// Empty lines and what follows a <c>#</c> say nothing.
/// </summary>
public static partial class WitnessText
{
    /// <summary>The most characters a text may have: some 600,000 ranges.</summary>
    public const int Longest = 50_000_000;

    private const int ShortestHash = 32;

    /// <summary>One range on a line.</summary>
    public static string Of(WitnessLine line) => string.Create(CultureInfo.InvariantCulture, $"{line.From}..{line.To} {line.Hash}");

    /// <summary>The witness that a text is; null with the reason when it is none.</summary>
    public static LedgerWitness? Parse(string text, out string? fault)
    {
        var lines = ImmutableArray.CreateBuilder<WitnessLine>();
        var number = 0;
        foreach (var whole in text.AsSpan().EnumerateLines())
        {
            number++;
            var line = (whole.IndexOf('#') is >= 0 and var comment ? whole[..comment] : whole).Trim().ToString();
            if (line.Length == 0) continue;
            fault = Read(line, lines);
            if (fault is null) continue;
            fault = string.Create(CultureInfo.InvariantCulture, $"line {number}: {fault}");
            return null;
        }

        fault = lines.Count == 0 ? "it has no line of a witness; 'eol witness' prints them" : null;
        return fault is null ? new LedgerWitness(lines.ToImmutable()) : null;
    }

    private static string? Read(string line, ImmutableArray<WitnessLine>.Builder lines)
    {
        var after = lines.Count == 0 ? 0 : lines[^1].To;
        if (Form().Match(line) is not { Success: true } match || !TryEntry(match.Groups["last"], out var last) || !TryEntry(match.Groups["first"], out var first))
        {
            return $"{TextRules.Quote(line)} is no line of a witness; FIRST..LAST HASH is wanted, such as 1..1000 and 64 hex digits";
        }

        var hash = match.Groups["hash"].Value.Replace("-", "", StringComparison.Ordinal).ToLowerInvariant();
        if (hash.Length is < ShortestHash or > 2 * LinkBuffer.HashSize) return $"the hash has {hash.Length} hex digits; {ShortestHash} to {2 * LinkBuffer.HashSize} are wanted";
        if (last <= after) return $"entry {last} comes after entry {after}; put the lines in the order of the entries";
        if (first > last) return $"the range ends at {last}, before it begins at {first}";
        lines.Add(new WitnessLine(first == 0 ? after + 1 : first, last, hash));
        return null;
    }

    /// <summary>The number of an entry; 0 when none is written.</summary>
    private static bool TryEntry(Group group, out long entry)
    {
        entry = 0;
        return !group.Success || (long.TryParse(group.ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture, out entry) && entry > 0);
    }

    [GeneratedRegex(@"\A((?<first>[0-9]+)\.\.)?(?<last>[0-9]+)[ \t]+(?<hash>[0-9A-Fa-f]+(-[0-9A-Fa-f]+)*)\z", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Form();
}
