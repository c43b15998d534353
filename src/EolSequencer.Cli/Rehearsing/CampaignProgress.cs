using System.Diagnostics;
using System.Globalization;
using EolSequencer.Cli.Output;
using EolSequencer.Rehearsal.Campaigns;
using Spectre.Console;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>How far a campaign is: on a terminal one line that changes, elsewhere a line for each tenth.</summary>
internal sealed class CampaignProgress
{
    /// <summary>Results that are kept in one go.</summary>
    public const int KeptTogether = 64;

    private readonly long _begun = Stopwatch.GetTimestamp();
    private readonly IAnsiConsole _told;
    private readonly bool _isTerminal;
    private readonly int _before;
    private readonly int _jobs;
    private int _done;
    private int _tenth;

    /// <param name="before">Runs that were there before.</param>
    /// <param name="jobs">All runs, at least one.</param>
    public CampaignProgress(IAnsiConsole told, int before, int jobs)
    {
        (_told, _isTerminal, _before, _jobs) = (told, told.Profile.Out.IsTerminal, before, jobs);
        (_done, _tenth) = (before, 10 * before / jobs);
    }

    public void Show(CampaignResult[] results)
    {
        _done += results.Length;
        var tenth = 10 * _done / _jobs;
        if (!_isTerminal && tenth == _tenth) return;
        _tenth = tenth;
        _told.Profile.Out.Writer.Write(_isTerminal ? $"\r{Line}\u001b[K" : $"{Line}\n");
    }

    public void End()
    {
        if (_isTerminal && _done > _before) _told.Profile.Out.Writer.WriteLine();
    }

    private string Line
    {
        get
        {
            var seconds = Stopwatch.GetElapsedTime(_begun).TotalSeconds;
            var left = _done == _before ? 0 : seconds / (_done - _before) * (_jobs - _done);
            return string.Create(CultureInfo.InvariantCulture, $"{_done} of {Words.Count(_jobs, "run")}, {seconds:0} s gone, about {left:0} s left");
        }
    }
}
