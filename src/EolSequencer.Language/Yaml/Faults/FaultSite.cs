using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Model.Source;
using YamlDotNet.Core;

namespace EolSequencer.Language.Yaml.Faults;

/// <summary>
/// The spot where the parser could not go on. Its own messages speak of tokens; what the author did wrong is read from the
/// line itself.
/// </summary>
internal sealed class FaultSite
{
    private readonly Retrace _retrace;

    private FaultSite(SourceText source, TreeBuilder built, int? from, int? to, string message)
    {
        _retrace = new Retrace(source, built, from);
        Source = source;
        Built = built;
        From = from ?? _retrace.Pending;
        To = Math.Max(From, to ?? From);
        Message = message;
    }

    public SourceText Source { get; }

    /// <summary>What had been understood until then.</summary>
    public TreeBuilder Built { get; }

    /// <summary>Offset at which the parser points, or the pending text when it points nowhere.</summary>
    public int From { get; }

    public int To { get; }

    /// <summary>The library's own words.</summary>
    public string Message { get; }

    /// <summary>Offset of the text the parser was busy with: mostly the one that causes the trouble.</summary>
    public int Pending => _retrace.Pending;

    /// <summary>True when the pending text is the value of a key.</summary>
    public bool IsBehindColon => _retrace.IsBehindColon;

    /// <summary>Offset of the innermost bracket that is open; -1 when none is.</summary>
    public int Bracket => _retrace.Brackets is [.., var innermost] ? innermost : -1;

    public bool InFlow => Bracket >= 0;

    /// <summary>The character the parser points at; NUL at the end of the file.</summary>
    public char Letter => At(From);

    /// <summary>The line in which reading ended. Where the parser points nowhere, a text ran on into the line after the pending one.</summary>
    public int GaveUpLine =>
        Message.Length > 0 ? Source.LineOf(Math.Max(From, Pending)) : Math.Min(Source.LineOf(Pending) + 1, Source.LineCount);

    public static FaultSite Of(SourceText source, TreeBuilder built, Exception fault)
    {
        if (fault is not YamlException known) return new FaultSite(source, built, null, null, "");
        var from = source.OffsetOf((int)known.Start.Line, (int)known.Start.Column);
        return new FaultSite(source, built, from, source.OffsetOf((int)known.End.Line, (int)known.End.Column), known.Message);
    }

    public Diagnostic Explain() =>
        Built.BracketTakenByTag
        ?? QuoteFaults.Explain(this)
        ?? StartFaults.Explain(this)
        ?? (InFlow ? FlowFaults.Explain(this) : BlockFaults.Explain(this))
        ?? new Diagnostic(YamlCodes.Unreadable, Source.PlaceOf(From, To), Unexplained, YamlCodes.Unreadable.Cure);

    public char At(int offset) => offset < Source.Text.Length ? Source.Text[offset] : '\0';

    public bool Says(string words) => Message.Contains(words, StringComparison.Ordinal);

    public bool IsSameLine(int left, int right) => Source.LineOf(left) == Source.LineOf(right);

    /// <summary>True when only blanks lie between two offsets of one line.</summary>
    public bool IsBlankBetween(int start, int end) =>
        start <= end && IsSameLine(start, end) && Source.Text.AsSpan(start..end).IsWhiteSpace();

    /// <summary>True when nothing but blanks stands before an offset in its line.</summary>
    public bool IsFirstInLine(int offset) => Source.Text.AsSpan(Source.StartOfLine(Source.LineOf(offset))..offset).IsWhiteSpace();

    /// <summary>The finding that a text wants quotes, with the author's line rewritten.</summary>
    /// <param name="at">Offset of the character that makes quotes necessary.</param>
    public Diagnostic WantsQuotes(DiagnosticCode code, int at, string found, int textStart)
    {
        var end = Math.Max(textStart + 1, TextExtent.EndOf(Source, textStart, InFlow));
        return new Diagnostic(code, PlaceOfLetter(at), found, Quoting.Hint(Source, textStart, Math.Min(end, Source.Text.Length)));
    }

    public SourcePlace PlaceOfLetter(int at) => Source.PlaceOf(at, Math.Min(at + 1, Math.Max(at, Source.EndOfLine(Source.LineOf(at)))));

    private string Unexplained => Message.Length == 0 ? "reading stopped here" : $"reading stopped here ({Shown.Plain(Message.TrimEnd('.'), 120)})";
}
