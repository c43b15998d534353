using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Station.Running;
using Serilog.Events;

namespace EolSequencer.Station.Log;

/// <summary>
/// What whoever looks after a station reads when something went wrong: one file a day in <c>log</c> of the data folder,
/// UTC. Nothing is ever judged or restored from it; a line that cannot be written is dropped, and the record is not.
/// </summary>
/// <remarks>
/// One for each station that the process holds: the files have the station's name, so no second process writes to them.
/// May be called from any thread.
/// </remarks>
public sealed class StationLog : IDisposable
{
    private readonly DayFile _file;
    private string _run = "";

    private StationLog(DayFile file) => _file = file;

    /// <summary>Why the newest line is not in the log, for people; null when it is.</summary>
    public string? Trouble => _file.Trouble;

    /// <summary>Opens the log of a station and says which program begins.</summary>
    /// <param name="dataFolder">The data folder; <c>log</c> is made in it.</param>
    /// <param name="station">Id of the station, which this process holds.</param>
    public static StationLog Open(string dataFolder, string station, TimeProvider time)
    {
        var log = new StationLog(new DayFile(Path.Combine(dataFolder, "log"), station, time));
        log._file.Write(LogEventLevel.Information, "program {Program} begins as process {Process}", VehicleRun.Program, Environment.ProcessId);
        return log;
    }

    /// <summary>Notes an event of a run that the record has kept; most kinds leave no line.</summary>
    public void Note(RunEvent next)
    {
        switch (next)
        {
            case RunBegun begun:
                _run = begun.Run;
                _file.Write(
                    LogEventLevel.Information,
                    "run {Run} begun: {Mode}, sequence {Sequence} revision {Revision}, order {Order}, vehicle {Vin}",
                    begun.Run, begun.Mode.Word(), begun.Sequence, begun.Revision, begun.Order.Id, begun.Order.Vin.Text);
                break;
            case RunEnded ended:
                _file.Write(
                    LogEventLevel.Information,
                    "run {Run} {Ended}: {Verdict}; {Pass} pass, {Fail} fail, {Error} error, {Inconclusive} inconclusive, {NotReached} not reached",
                    _run, ended.Interrupted ? "interrupted" : "ended", ended.RollUp.Verdict.Word(),
                    ended.RollUp.Pass, ended.RollUp.Fail, ended.RollUp.Error, ended.RollUp.Inconclusive, ended.NotReached.Length);
                break;
            case Resumed resumed:
                _file.Write(LogEventLevel.Warning, "run {Run} had broken off and is taken up: {For}", _run, resumed.For.ToString().ToLowerInvariant());
                break;
            case ClockSet set:
                _file.Write(LogEventLevel.Warning, "run {Run}: the wall clock was set from {Before} to {After}", _run, set.Before, set.After);
                break;
            case DeviceLost lost:
                _file.Write(LogEventLevel.Warning, "run {Run}: device {Role} lost: {Cause}", _run, lost.Role, lost.Cause);
                break;
            case DeviceBack back:
                _file.Write(LogEventLevel.Information, "run {Run}: device {Role} is back", _run, back.Role);
                break;
        }
    }

    /// <summary>The events that follow are those of a run that had broken off.</summary>
    public void TakeUp(string run) => _run = run;

    /// <summary>Notes what a device found that whoever looks after the station should know.</summary>
    public void Noted(string text) => _file.Write(LogEventLevel.Information, "{Text}", text);

    /// <summary>Notes that something could not be opened, so that no run began.</summary>
    /// <param name="reason">What and why, for people.</param>
    public void Refused(string reason) => _file.Write(LogEventLevel.Warning, "refused: {Reason}", reason);

    /// <summary>Notes that the record could not be kept.</summary>
    /// <param name="reason">What and why, for people.</param>
    public void RecordFault(string reason) => _file.Write(LogEventLevel.Error, "record: {Reason}", reason);

    /// <summary>Says that the program ends: a beginning without an end was a crash.</summary>
    public void Dispose()
    {
        _file.Write(LogEventLevel.Information, "program ends");
        _file.Dispose();
    }
}
