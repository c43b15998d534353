using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>
/// What happens now: on a terminal one line that is written over, elsewhere a line for each group that has been left;
/// what does not pass always has a line of its own.
/// </summary>
internal sealed class RunProgress(IAnsiConsole console, bool isTerminal)
{
    private readonly RunFold _run = new();
    private string? _group;
    private int _inGroup;
    private int _shown;

    /// <summary>The run so far.</summary>
    public RunFold Run => _run;

    public void Show(RunEvent next)
    {
        _run.Add(next);
        switch (next)
        {
            case RunBegun begun:
                console.MarkupLineInterpolated($"[bold]{begun.Order.Vin}[/]: {Words.Count(begun.Planned, "step")} planned, {Words.Count(begun.NotApplicable.Length, "step")} not applicable");
                break;
            case Judged judged: Show(judged); break;
            case Stopped stopped: Line($"[yellow]stopped[/]: {Markup.Escape(stopped.Reason)}"); break;
            case DeviceLost lost: Line($"[magenta]{Markup.Escape(lost.Role)} lost[/]: {Markup.Escape(lost.Cause)}"); break;
            case DeviceBack back: Line($"{Markup.Escape(back.Role)} is back"); break;
            case ClockSet set: Line($"[yellow]the wall clock was set[/] from {set.Before.UtcDateTime:yyyy-MM-dd HH:mm:ss} to {set.After.UtcDateTime:yyyy-MM-dd HH:mm:ss} UTC"); break;
            case Resumed { For: ResumedFor.Steps } resumed: Line($"[yellow]goes on[/] at {resumed.Wall.UtcDateTime:HH:mm:ss} UTC, {_run.Done} of {_run.Begun?.Planned} steps done"); break;
            case RunEnded: LeaveGroup(null); break;
        }
    }

    private void Show(Judged judged)
    {
        var group = RunTable.GroupOf(judged.Step);
        if (group != _group) LeaveGroup(group);
        _inGroup++;
        if (judged.Counted > Verdict.Pass)
        {
            Line($"[{Words.Colour(judged.Counted)}]{Words.Of(judged.Counted)}[/]  {Markup.Escape(judged.Step)}  {Markup.Escape(Words.Finding(judged))}");
        }

        if (isTerminal && _run.Begun is { } begun)
        {
            Over($"{Words.Seconds(_run.At),8}  {_run.Done}/{begun.Planned}  {Words.Sign(judged.Counted)} {judged.Step}");
        }
    }

    private void LeaveGroup(string? next)
    {
        if (_group is not null && !isTerminal) console.WriteLine($"{Words.Seconds(_run.At),10}  {_group}: {Words.Count(_inGroup, "step")}");
        if (next is null) Over("");
        (_group, _inGroup) = (next, 0);
    }

    private void Line(string markup)
    {
        Over("");
        console.MarkupLine("            " + markup);
    }

    /// <summary>Writes over the present line; nothing elsewhere than on a terminal.</summary>
    private void Over(string text)
    {
        if (!isTerminal) return;
        var width = Math.Max(20, console.Profile.Width - 1);
        if (text.Length > width) text = text[..width];
        console.Profile.Out.Writer.Write('\r' + text.PadRight(Math.Min(width, Math.Max(_shown, text.Length))) + (text.Length == 0 ? "\r" : ""));
        _shown = text.Length;
    }
}
