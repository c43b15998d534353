using EolSequencer.Cli.Probing.Scratch;
using EolSequencer.Cli.Probing.Verbs;
using EolSequencer.Station.Time;

namespace EolSequencer.Cli.Probing;

/// <summary>Lines in, lines out, until <c>quit</c> or the end of the input. Trouble is a line of text; the session goes on behind it.</summary>
internal sealed class ProbeSession
{
    private const string Quit = "quit";
    private const string Help = "help";

    private readonly ProbeScreen _screen;
    private readonly TypedLines _lines;
    private readonly Interrupts _interrupts;
    private readonly EvalVerb _eval;
    private readonly DoVerb _do;
    private readonly IReadOnlyList<IVerb> _verbs;

    public ProbeSession(
        ProbeBench bench, FrameLog frames, bool isHeard, ProbeScreen screen, TypedLines lines, StationLoop? loop, Interrupts interrupts, TimeSpan lineLimit)
    {
        (_screen, _lines, _interrupts) = (screen, lines, interrupts);
        _eval = new EvalVerb(new ScratchDesk(bench, screen, loop, lineLimit));
        _do = new DoVerb(bench, screen, lines);
        _verbs = [new ReadVerb(bench, screen), new WatchVerb(bench, screen, lines, loop is not null), _do, new BytesVerb(frames, screen, isHeard), new ListVerb(bench, screen), _eval];
    }

    /// <summary>Runs to the end on the session's thread.</summary>
    public async Task RunAsync()
    {
        while (true)
        {
            if (_lines.IsTyped) _screen.Prompt("> ");
            if (await _lines.NextAsync(CancellationToken.None) is not { } typed) break;
            var line = typed.Trim();
            if (!_lines.IsTyped && line.Length > 0) _screen.Write($"> {line}");
            if (line == Quit) break;
            if (line.Length > 0) await HandleAsync(line);
        }

        if (_do.Risky.Count > 0) _screen.Write($"CAUTION: you have done {string.Join(", ", _do.Risky)}; look whether anything is still on or moving before you leave.");
    }

    private async Task HandleAsync(string line)
    {
        var turn = _interrupts.Begin();
        try
        {
            var space = line.IndexOf(' ', StringComparison.Ordinal);
            var (word, rest) = space < 0 ? (line, "") : (line[..space], line[space..].Trim());
            if (word == Help) ShowHelp();
            else if (_verbs.FirstOrDefault(verb => verb.Word == word) is { } verb) await verb.RunAsync(rest, turn);
            else await _eval.RunAsync(line, turn);
        }
        catch (ProbeTrouble trouble)
        {
            _screen.Write($"error: {trouble.Message}");
        }
        catch (OperationCanceledException)
        {
            _screen.Write("ended");
        }
        catch (Exception fault)
        {
            // The edge of a command: whatever it ran into, the session and its open devices stay.
            _screen.Write($"error: {fault.GetType().Name}: {fault.Message}");
        }
        finally
        {
            _interrupts.End();
        }
    }

    private void ShowHelp()
    {
        var forms = _verbs.SelectMany(verb => verb.Forms).Append((Help, "this")).Append((Quit, "ends the session, as the end of the input does")).ToList();
        var width = forms.Max(form => form.Item1.Length);
        foreach (var (form, meaning) in forms) _screen.Write($"  {form.PadRight(width)}  {meaning}");
        _screen.Write("A channel is written bus.door_ajar[rear], or door_ajar[rear] where only one device has it. Ctrl-C ends what goes on.");
    }
}
