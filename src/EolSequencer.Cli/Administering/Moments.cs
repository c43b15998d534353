using System.CommandLine;
using System.Globalization;
using EolSequencer.Records.Administration;

namespace EolSequencer.Cli.Administering;

/// <summary>Moments on the command line: with an offset, since a local time would mean another one on another computer.</summary>
internal static class Moments
{
    public static Option<string?> Option(string name, string description) => new(name) { Description = $"{description} With its offset: 2026-11-03T06:00Z.", HelpName = "TIME" };

    /// <summary>Reads one; null text is no moment.</summary>
    public static Refused? Read(string? text, out DateTimeOffset? moment)
    {
        moment = null;
        if (text is null) return null;
        string[] forms = ["yyyy-MM-dd'T'HH:mmK", "yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK"];
        var hasOffset = text.EndsWith('Z') || (text.Length > 6 && text[^6] is '+' or '-' && text[^3] == ':');
        if (!hasOffset || !DateTimeOffset.TryParseExact(text, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var read))
        {
            return new Refused(Refusal.Malformed, $"'{text}' is no moment; write it with its offset, such as 2026-11-03T06:00Z or 2026-11-03T07:00+01:00");
        }

        moment = read.ToUniversalTime();
        return null;
    }
}
