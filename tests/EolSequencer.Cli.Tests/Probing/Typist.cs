using System.Text;

namespace EolSequencer.Cli.Tests.Probing;

/// <summary>A person who types the next line when something stands on the screen.</summary>
internal sealed class Typist(params (string Seen, string Line)[] lines) : TextReader
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly Page _page = new();
    private int _next;
    private int _read;

    /// <summary>The screen.</summary>
    public TextWriter Screen => _page;

    /// <summary>What stands on it.</summary>
    public string Shown => _page.Text;

    public override string? ReadLine()
    {
        if (_next == lines.Length) return null;
        var (seen, line) = lines[_next++];
        if (!SpinWait.SpinUntil(() => _page.Text.IndexOf(seen, _read, StringComparison.Ordinal) >= 0, Patience)) return null;
        _read = _page.Text.IndexOf(seen, _read, StringComparison.Ordinal) + seen.Length;
        return line;
    }

    private sealed class Page : TextWriter
    {
        private readonly StringBuilder _text = new();

        public override Encoding Encoding => Encoding.UTF8;

        public string Text
        {
            get
            {
                lock (_text) return _text.ToString();
            }
        }

        public override void Write(char value)
        {
            lock (_text) _text.Append(value);
        }
    }
}
