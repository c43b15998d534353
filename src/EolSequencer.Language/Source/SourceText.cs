using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Unicode;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Source;

/// <summary>One file as an author wrote it: its exact bytes, the text they stand for and where its lines begin.</summary>
public sealed class SourceText
{
    /// <summary>The largest file that is read, in bytes.</summary>
    public const int MostBytes = 4 * 1024 * 1024;

    private static readonly byte[] Utf8Mark = [0xEF, 0xBB, 0xBF];

    private readonly LineTable _lines;

    private SourceText(string path, byte[] bytes, string text)
    {
        Path = path;
        Bytes = bytes;
        Text = text;
        Sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
        _lines = new LineTable(text);
    }

    /// <summary>The path as diagnostics show it.</summary>
    public string Path { get; }

    /// <summary>Every byte of the file, a byte order mark included.</summary>
    public ReadOnlyMemory<byte> Bytes { get; }

    /// <summary>The decoded text without its byte order mark. Offsets and columns count its UTF-16 units.</summary>
    public string Text { get; }

    /// <summary>SHA-256 of <see cref="Bytes"/>, 64 lower-case hexadecimal digits.</summary>
    public string Sha256 { get; }

    public int LineCount => _lines.Count;

    /// <summary>Decodes UTF-8, or reports why the bytes are no text and returns <c>null</c>.</summary>
    public static SourceText? TryDecode(string path, byte[] bytes, Report report)
    {
        if (bytes.Length > MostBytes)
        {
            var size = (bytes.Length / 1048576m).ToString("0.00", CultureInfo.InvariantCulture);
            report.Add(FileCodes.TooLarge, WholeFile(path), $"the file has {size} MiB, the most that is read is 4 MiB");
            return null;
        }

        if (bytes.AsSpan() is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            report.Add(FileCodes.NotUtf8, WholeFile(path), "the file is in UTF-16");
            return null;
        }

        var nul = Array.IndexOf(bytes, (byte)0);
        if (nul >= 0)
        {
            report.Add(FileCodes.NotText, PlaceOfByte(path, bytes, nul), $"byte {nul + 1} of the file is 00, which no text has");
            return null;
        }

        var content = bytes.AsSpan(bytes.AsSpan().StartsWith(Utf8Mark) ? Utf8Mark.Length : 0);
        var letters = new char[content.Length];
        if (Utf8.ToUtf16(content, letters, out var read, out var written, replaceInvalidSequences: false) != OperationStatus.Done)
        {
            var at = bytes.Length - content.Length + read;
            var value = bytes[at].ToString("X2", CultureInfo.InvariantCulture);
            report.Add(FileCodes.NotUtf8, PlaceOfByte(path, bytes, at), $"byte {value} here is not UTF-8");
            return null;
        }

        return new SourceText(path, bytes, new string(letters, 0, written));
    }

    /// <summary>One line without its line break. Lines count from 1.</summary>
    public ReadOnlySpan<char> Line(int line) => Text.AsSpan(_lines.StartOf(line).._lines.EndOf(line));

    public int StartOfLine(int line) => _lines.StartOf(line);

    /// <summary>Just behind the last character of a line, before its line break.</summary>
    public int EndOfLine(int line) => _lines.EndOf(line);

    public int LineOf(int offset) => _lines.LineOf(offset);

    /// <summary>The column (from 1) of an offset in its line.</summary>
    public int ColumnOf(int offset) => offset - _lines.StartOf(_lines.LineOf(offset)) + 1;

    /// <summary>The offset of a line and column, moved into the text where it lies outside.</summary>
    public int OffsetOf(int line, int column)
    {
        if (line < 1) return 0;
        return line > _lines.Count ? Text.Length : Math.Min(_lines.StartOf(line) + Math.Max(column, 1) - 1, Text.Length);
    }

    /// <summary>The place of the characters from <paramref name="start"/> up to, not including, <paramref name="end"/>.</summary>
    public SourcePlace PlaceOf(int start, int end)
    {
        var (line, endLine) = (_lines.LineOf(start), _lines.LineOf(end));
        return new SourcePlace(Path, line, start - _lines.StartOf(line) + 1, endLine, end - _lines.StartOf(endLine) + 1);
    }

    /// <summary>The place of a fault that concerns a file as a whole.</summary>
    internal static SourcePlace WholeFile(string path) => SourcePlace.None with { File = path };

    private static SourcePlace PlaceOfByte(string path, byte[] bytes, int index)
    {
        var before = Encoding.UTF8.GetString(bytes, 0, index).TrimStart('\uFEFF');
        var lines = new LineTable(before);
        var column = before.Length - lines.StartOf(lines.Count) + 1;
        return new SourcePlace(path, lines.Count, column, lines.Count, column + 1);
    }
}
