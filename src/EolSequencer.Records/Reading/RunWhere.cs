using System.Text;
using Dapper;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Reading;

/// <summary>A filter as SQL over the table <c>run</c>: only what is asked about stands in it, so that an index is used where there is one.</summary>
internal static class RunWhere
{
    /// <summary>The condition with its parameters, and <c>@Most</c>.</summary>
    /// <param name="vins">The numbers of the vehicle asked for; empty: the one of the filter, if any.</param>
    public static (string Text, DynamicParameters Values) Of(RunFilter filter, IReadOnlyList<string> vins)
    {
        var text = new StringBuilder("WHERE 1");
        var values = new DynamicParameters(new { filter.Most });
        Ask("mode = @Mode", "Mode", filter.Mode is { } mode ? mode.Word() : null);
        if (vins.Count > 0) Ask("vin IN @Vins", "Vins", vins);
        else Ask("vin = @Vin", "Vin", filter.Vin);
        Ask("station = @Station", "Station", filter.Station);
        Ask("station_kind = @StationKind", "StationKind", filter.StationKind);
        Ask("sequence = @Sequence", "Sequence", filter.Sequence);
        Ask("verdict = @Verdict", "Verdict", filter.Verdict?.Word());
        Ask("begun_utc >= @From", "From", filter.From is { } from ? UtcText.Of(from) : null);
        Ask("begun_utc < @Until", "Until", filter.Until is { } until ? UtcText.Of(until) : null);
        Ask("id < (SELECT id FROM run WHERE run = @Before)", "Before", filter.Before);
        if (filter.OnlyUnfinished) text.Append(" AND ended_utc IS NULL");
        return (text.ToString(), values);

        void Ask(string condition, string name, object? value)
        {
            if (value is null) return;
            text.Append(" AND ").Append(condition);
            values.Add(name, value);
        }
    }
}
