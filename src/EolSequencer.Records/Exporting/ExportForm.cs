namespace EolSequencer.Records.Exporting;

/// <summary>How exported lines look.</summary>
public enum ExportForm
{
    /// <summary>A JSON object on each line, UTF-8; texts are exactly those of the record, and what is absent is left out.</summary>
    JsonLines,

    /// <summary>
    /// A table after RFC 4180, UTF-8 without a byte order mark, lines ended by CRLF, the first with the names of the columns. Texts are made
    /// harmless for spreadsheets, see <see cref="CsvText"/>.
    /// </summary>
    Csv,
}
