using System.Collections.Immutable;
using System.Text.Json;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// The criteria of a step: <c>v</c> value, or <c>s</c> one that is no number, <c>u</c> unit, <c>l</c> and <c>h</c> ends of the window, <c>x</c> the expectation
/// where it is not simply that window, <c>q</c> uncertainty, <c>gd</c> guarded by it, <c>ro</c> record only, <c>p</c> verdict (absent: the step's
/// measured one), <c>o</c> which criterion (absent: the step's value). A single criterion on the step's value stands in the
/// event itself; any other number of them in the list <c>c</c>.
/// </summary>
internal static class CriterionForm
{
    public static void WriteAll(Utf8JsonWriter json, Judged judged)
    {
        if (judged.Criteria.IsDefaultOrEmpty) return;
        if (judged.Criteria is [{ Of: "" } only] && !IsSilent(only, judged.Measured))
        {
            Write(json, only, judged.Measured);
            return;
        }

        json.WriteStartArray("c"u8);
        foreach (var criterion in judged.Criteria)
        {
            json.WriteStartObject();
            if (criterion.Of.Length > 0) json.WriteString("o"u8, criterion.Of);
            Write(json, criterion, judged.Measured);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public static ImmutableArray<CriterionResult> ReadAll(Fields fields, Verdict measured)
    {
        if (fields.Optional("c"u8) is not null) return fields.List("c"u8, item => Read(new Fields(item), measured));
        return HasOne(fields) ? [Read(fields, measured)] : [];
    }

    private static void Write(Utf8JsonWriter json, CriterionResult criterion, Verdict measured)
    {
        json.WriteOptional(criterion.IsText ? "s"u8 : "v"u8, criterion.Value);
        json.WriteOptional("u"u8, criterion.Unit);
        json.WriteOptional("l"u8, criterion.Low);
        json.WriteOptional("h"u8, criterion.High);
        if (!WindowWords.Say(criterion.Expected, criterion.Low, criterion.High, criterion.Unit)) json.WriteString("x"u8, criterion.Expected);
        json.WriteOptional("q"u8, criterion.Uncertainty);
        json.WriteFlag("gd"u8, criterion.IsGuarded);
        json.WriteFlag("ro"u8, criterion.RecordOnly);
        if (criterion.Verdict != measured) json.WriteString("p"u8, criterion.Verdict.Word());
    }

    private static CriterionResult Read(Fields fields, Verdict measured)
    {
        var text = fields.TextOrNull("s"u8);
        var (low, high, unit) = (fields.TextOrNull("l"u8), fields.TextOrNull("h"u8), fields.TextOrNull("u"u8));
        return new CriterionResult(
            fields.TextOrNull("o"u8) ?? "",
            text ?? fields.TextOrNull("v"u8),
            unit,
            fields.Optional("x"u8) is { } expected ? expected.GetString() : WindowWords.For(low, high, unit),
            low,
            high,
            fields.TextOrNull("q"u8),
            fields.VerdictOr("p"u8, measured),
            fields.Flag("ro"u8))
        {
            IsGuarded = fields.Flag("gd"u8),
            IsText = text is not null,
        };
    }

    /// <summary>Whether nothing of the criterion would be written: then it needs the list to be seen at all.</summary>
    private static bool IsSilent(CriterionResult criterion, Verdict measured) =>
        criterion is { Value: null, Unit: null, Low: null, High: null, Expected: null, Uncertainty: null, RecordOnly: false }
        && criterion.Verdict == measured;

    private static bool HasOne(Fields fields) =>
        fields.Optional("v"u8) is not null || fields.Optional("s"u8) is not null || fields.Optional("x"u8) is not null || fields.Optional("l"u8) is not null
        || fields.Optional("h"u8) is not null || fields.Optional("u"u8) is not null || fields.Optional("q"u8) is not null
        || fields.Optional("ro"u8) is not null || fields.Optional("p"u8) is not null;
}
