using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Ports;

namespace EolSequencer.Language.Scripts;

/// <summary>Reads an operator script. It may serve several sequences, so a step that none of them has is no error.</summary>
internal static class ScriptBinder
{
    /// <summary>The time to an answer when the script does not say one.</summary>
    public static readonly TimeSpan UsualAfter = TimeSpan.FromSeconds(2);

    /// <summary>The keys of the file.</summary>
    public static MapShape File { get; } = new(
        "an operator script",
        [
            new("operator-script", Ids.FileForm, "id of the script"),
            new("answers", Forms.Names(StepAddress.KeyForm, AnswerReader.Form), "what is answered, by step; with ! the caution of the step, with ? the question after it"),
        ],
        [new("after", AnswerReader.AfterForm, "usual time from the prompt to the answer; 2 s if nothing is said")]);

    /// <summary>The script; null: already reported.</summary>
    /// <param name="asked">What the sequences ask; null when that is not known, and then nothing is said about it.</param>
    public static OperatorScript? Bind(YamlNode root, Report report, AskedSteps? asked = null)
    {
        if (MapReader.Open(root, File, report) is not { } keys) return null;
        var id = keys.Find("operator-script") is { } node ? Ids.OfFile(node, "an operator script", report) : null;
        var usual = keys.Duration("after") ?? UsualAfter;
        var answers = ImmutableSortedDictionary.CreateBuilder<string, ImmutableArray<ScriptedAnswer>>(StringComparer.Ordinal);
        foreach (var (key, value) in keys.FreeMap("answers")?.Entries ?? [])
        {
            if (AddressOf(key, report) is not { } address || AnswersTo(address, value, usual, report) is not { } found) continue;
            asked?.Check(address, key, found, report);
            answers[address.Text] = found;
        }

        return id is null ? null : new OperatorScript(id, answers.ToImmutable());
    }

    private static StepAddress? AddressOf(YamlScalar key, Report report)
    {
        if (StepAddress.Of(key) is { } address) return address;
        report.Add(ScriptCodes.BadAddress, key.Place, $"{Shown.Quoted(key.Text)} is the id of no step");
        return null;
    }

    private static ImmutableArray<ScriptedAnswer>? AnswersTo(StepAddress address, YamlNode node, TimeSpan usual, Report report)
    {
        var reader = new AnswerReader(address, usual, report);
        if (node is not YamlList list) return reader.Read(node) is { } only ? [only] : null;
        if (list.Items.Count == 0) report.Add(ScriptCodes.NoAnswers, list.Place, "the list is empty");

        var read = list.Items.Select(reader.Read).ToList();
        return read.Count == 0 || read.Contains(null) ? null : [.. read.OfType<ScriptedAnswer>()];
    }
}
