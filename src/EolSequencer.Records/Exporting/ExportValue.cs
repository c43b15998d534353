using System.Globalization;
using EolSequencer.Model.Values;

namespace EolSequencer.Records.Exporting;

/// <summary>A value in an exported line.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">Its text; null when there is none.</param>
internal readonly record struct ExportValue(ExportKind Kind, string? Text)
{
    public static ExportValue Of(string? text) => new(text is null ? ExportKind.Absent : ExportKind.Text, text);

    public static ExportValue Of(long? number) => new(number is null ? ExportKind.Absent : ExportKind.Number, number?.ToString(CultureInfo.InvariantCulture));

    public static ExportValue Of(bool? truth) => new(truth is null ? ExportKind.Absent : ExportKind.Truth, truth is null ? null : truth.Value ? "true" : "false");

    /// <summary>A time in seconds, exactly.</summary>
    public static ExportValue Seconds(long? microseconds) => microseconds is { } some
        ? new ExportValue(ExportKind.Number, NumberText.Of(some / 1_000_000m))
        : new ExportValue(ExportKind.Absent, null);

    /// <summary>A measured number as the decimal text of the record; any other text stays a text.</summary>
    public static ExportValue Measured(string? text) => text is not null && NumberText.TryParse(text, out _) ? new ExportValue(ExportKind.Decimal, text) : Of(text);
}

/// <summary>What an exported value is.</summary>
internal enum ExportKind
{
    /// <summary>There is none.</summary>
    Absent,

    Text,

    /// <summary>A count or a time: a number in JSON.</summary>
    Number,

    /// <summary>A measured number: in JSON its exact text, because programs would read a number as a binary one.</summary>
    Decimal,

    Truth,
}
