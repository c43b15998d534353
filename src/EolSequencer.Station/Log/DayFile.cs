using System.Globalization;
using Serilog;
using Serilog.Core;
using Serilog.Events;

namespace EolSequencer.Station.Log;

/// <summary>
/// Lines of one station in one file for each day of UTC. A file that cannot be opened or written costs the line, never
/// another file name: the file of a day is where people look, and the next line tries it again.
/// </summary>
internal sealed class DayFile(string folder, string station, TimeProvider time) : IDisposable
{
    /// <summary>Files of earlier days that are kept; older ones are deleted when a new day's file is opened.</summary>
    public const int MostKept = 90;

    private const string Line = "{Timestamp:yyyy-MM-dd'T'HH:mm:ss.fff'Z'} {Level:u3} {Message:lj}\n";
    private const string DayForm = "yyyy-MM-dd";

    private readonly Lock _gate = new();
    private Logger? _logger;
    private DateOnly _day;

    /// <summary>Why the newest line is not in the file; null when it is.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Writes one line; it is in the file when the call returns, or <see cref="Trouble"/> says why not.</summary>
    /// <param name="template">The words, with a named value in each pair of braces.</param>
    public void Write(LogEventLevel level, string template, params object[] values)
    {
        lock (_gate)
        {
            try
            {
                var now = time.GetUtcNow();
                var logger = For(DateOnly.FromDateTime(now.UtcDateTime));
                logger.BindMessageTemplate(template, [.. values.Select(OnOneLine)], out var words, out var named);
                logger.Write(new LogEvent(now, level, null, words!, named!));
                Trouble = null;
            }
            catch (Exception fault)
            {
                // Whatever it is, a test must not end because of its log.
                Trouble = fault.GetBaseException().Message;
                Close();
            }
        }
    }

    public void Dispose()
    {
        lock (_gate) Close();
    }

    private Logger For(DateOnly day)
    {
        if (_logger is not null && _day == day) return _logger;
        Close();
        Directory.CreateDirectory(folder);
        DeleteOld();
        // The audit form lets a fault reach the caller; the other one would drop lines and tell nobody.
        _logger = new LoggerConfiguration().AuditTo.File(PathOf(day), outputTemplate: Line, formatProvider: CultureInfo.InvariantCulture).CreateLogger();
        _day = day;
        return _logger;
    }

    private string PathOf(DateOnly day) => Path.Combine(folder, $"{station}-{day.ToString(DayForm, CultureInfo.InvariantCulture)}.log");

    private void DeleteOld()
    {
        // Days sort as text, and another station's id may begin like this one's.
        var days = Directory.GetFiles(folder, $"{station}-*.log")
            .Where(path => DateOnly.TryParseExact(Path.GetFileNameWithoutExtension(path)[(station.Length + 1)..], DayForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
            .Order(StringComparer.Ordinal).ToList();
        foreach (var path in days.SkipLast(MostKept)) Delete(path);
    }

    private static void Delete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Somebody reads it; the next day tries again.
        }
    }

    private void Close()
    {
        try
        {
            _logger?.Dispose();
        }
        catch (Exception fault)
        {
            Trouble = fault.GetBaseException().Message;
        }

        _logger = null;
    }

    private static object OnOneLine(object value) => value is string text ? string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter)) : value;
}
