using EolSequencer.Model.Judging;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Reading;

/// <summary>A filter as SQL over the table <c>run</c>.</summary>
internal static class RunWhere
{
    public const string Text =
        """
        WHERE (@Mode IS NULL OR mode = @Mode) AND (@Vin IS NULL OR vin = @Vin) AND (@Station IS NULL OR station = @Station)
          AND (@StationKind IS NULL OR station_kind = @StationKind) AND (@Sequence IS NULL OR sequence = @Sequence)
          AND (@Verdict IS NULL OR verdict = @Verdict) AND (@From IS NULL OR begun_utc >= @From) AND (@Until IS NULL OR begun_utc < @Until)
          AND (NOT @OnlyUnfinished OR ended_utc IS NULL) AND (@Before IS NULL OR id < (SELECT id FROM run WHERE run = @Before))
        """;

    public static object Parameters(RunFilter filter) => new
    {
        Mode = filter.Mode is { } mode ? RunBegunForm.WordOf(mode) : null,
        filter.Vin,
        filter.Station,
        filter.StationKind,
        filter.Sequence,
        Verdict = filter.Verdict?.Word(),
        From = filter.From is { } from ? UtcText.Of(from) : null,
        Until = filter.Until is { } until ? UtcText.Of(until) : null,
        filter.OnlyUnfinished,
        filter.Before,
        filter.Most,
    };
}
