using System.Collections.Frozen;
using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Binding.Values;

/// <summary>What may be a name that expressions can say, and what may be the id of a file.</summary>
internal static class Ids
{
    private const int Longest = 64;

    private static readonly FrozenSet<string> YamlWords = new[] { "on", "off", "yes", "no", "y", "n", "true", "false", "null" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    // The compiler's own list would load the compiler, which a warm start does without.
    private static readonly FrozenSet<string> Keywords =
    (
        "abstract as base bool break byte case catch char checked class const continue decimal default delegate do double else enum event " +
        "explicit extern false finally fixed float for foreach goto if implicit in int interface internal is lock long namespace new null " +
        "object operator out override params private protected public readonly ref return sbyte sealed short sizeof stackalloc static " +
        "string struct switch this throw true try typeof uint ulong unchecked unsafe ushort using virtual void volatile while"
    ).Split(' ').ToFrozenSet(StringComparer.Ordinal);

    private static readonly string NoKeyword = $"(?!(?:{string.Join('|', Keywords.Concat(YamlWords.Select(AnyCase)).Order(StringComparer.Ordinal))})$)";

    /// <summary>What <see cref="Name"/> takes.</summary>
    public static ValueForm.Text NameForm { get; } = new($"^{NoKeyword}[A-Za-z][A-Za-z0-9_]{{0,{Longest - 1}}}$", Subject.None);

    /// <summary>What <see cref="FirstName"/> takes.</summary>
    public static ValueForm.Text FirstNameForm { get; } =
        new($"^(?!(?:{string.Join('|', ExpressionNames.Reserved)})$){NoKeyword}[A-Za-z][A-Za-z0-9_]{{0,{Longest - 1}}}$", Subject.None);

    /// <summary>What <see cref="OfFile"/> takes.</summary>
    public static ValueForm.Text FileForm { get; } = new($"^{NoKeyword}[A-Za-z][A-Za-z0-9_-]{{0,{Longest - 1}}}$", Subject.None);

    /// <summary>What <see cref="IndexValue"/> takes.</summary>
    public static ValueForm.Text IndexForm { get; } = new($"^[A-Za-z0-9_-]{{1,{Longest}}}$", Subject.None);

    /// <summary>What <see cref="IndexValues"/> takes.</summary>
    public static ValueForm IndexList { get; } = new ValueForm.List(IndexForm, AreDistinct: true);

    /// <summary>What <see cref="IndexValues"/> takes where there must be a choice.</summary>
    public static ValueForm Choices { get; } = new ValueForm.List(IndexForm, 2, AreDistinct: true);

    /// <summary>The id of a file, or of what only its name stands for, that an editor can look up.</summary>
    public static ValueForm FileNamed(Subject subject) => FileForm with { About = subject };

    /// <summary>The name of a step, option, channel or anything else an expression can say; null: already reported.</summary>
    public static string? Name(YamlNode node, string what, Report report)
    {
        if (node.AsText(what, report) is not { } scalar) return null;
        if (WhyNoName(scalar.Text) is not { } why) return scalar.Text;
        report.Add(NameCodes.BadName, scalar.Place, $"{Shown.Quoted(scalar.Text)} {why}");
        return null;
    }

    /// <summary>The id of a file: as a name, and it may hold hyphens; null: already reported.</summary>
    public static string? OfFile(YamlNode node, string what, Report report)
    {
        if (node.AsText(what, report) is not { } scalar) return null;
        if (WhyNoName(scalar.Text.Replace('-', '_')) is not { } why) return scalar.Text;
        report.Add(NameCodes.BadName, scalar.Place, $"{Shown.Quoted(scalar.Text)} {why}", "write a letter, then letters, digits, _ and -");
        return null;
    }

    /// <summary>A value that stands in the brackets of an id: letters, digits, _ and -; null: already reported.</summary>
    public static string? IndexValue(YamlNode node, string what, Report report)
    {
        if (node.AsText(what, report) is not { } scalar) return null;
        if (scalar.Text.Length <= Longest && scalar.Text.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '_' or '-')) return scalar.Text;
        report.Add(NameCodes.BadIndexValue, scalar.Place, $"{Shown.Quoted(scalar.Text)} cannot stand in the brackets of an id");
        return null;
    }

    /// <summary>A name by which expressions call something of their own, such as a role or a parameter; null: already reported.</summary>
    public static string? FirstName(YamlNode node, string what, Report report)
    {
        if (Name(node, what, report) is not { } name) return null;
        if (!ExpressionNames.Reserved.Contains(name)) return name;
        report.Add(NameCodes.Reserved, node.Place, $"{what} cannot be '{name}', which expressions know as something else");
        return null;
    }

    /// <summary>Different values that may stand in the brackets of an id; null: already reported.</summary>
    public static ImmutableArray<string>? IndexValues(YamlNode node, string what, Report report)
    {
        if (node.AsList(what, report) is not { } items) return null;
        var values = ImmutableArray.CreateBuilder<string>(items.Count);
        foreach (var item in items)
        {
            if (IndexValue(item, $"a value of {what}", report) is not { } value) continue;
            if (values.Contains(value)) report.Add(NameCodes.Twice, item.Place, $"'{value}' stands twice in {what}");
            else values.Add(value);
        }

        return values.Count == 0 ? null : values.ToImmutable();
    }

    private static string AnyCase(string word) => string.Concat(word.Select(letter => $"[{letter}{char.ToUpperInvariant(letter)}]"));

    private static string? WhyNoName(string text)
    {
        if (text.Length > Longest) return $"has {text.Length} characters, {Longest} are allowed";
        if (!char.IsAsciiLetter(text[0])) return "does not begin with a letter";
        if (text.FirstOrDefault(letter => !char.IsAsciiLetterOrDigit(letter) && letter != '_') is var wrong and not '\0') return $"holds '{wrong}'";
        if (Keywords.Contains(text)) return "is a word of C#";
        return YamlWords.Contains(text) ? "is read as a truth value or as nothing by other programs" : null;
    }
}
