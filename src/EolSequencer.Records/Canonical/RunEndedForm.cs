using System.Text.Json;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// <see cref="RunEnded"/>: <c>run-ended</c> worst counted verdict, <c>z</c> the numbers [none, pass, inconclusive, fail,
/// error], <c>interrupted</c>, <c>not-reached</c> steps, <c>not-counted</c> steps behind the verdict.
/// </summary>
internal static class RunEndedForm
{
    public static ReadOnlySpan<byte> Kind => "run-ended"u8;

    public static void Write(Utf8JsonWriter json, RunEnded ended)
    {
        var sum = ended.RollUp;
        json.WriteString(Kind, sum.Verdict.Word());
        json.WriteStartArray("z"u8);
        json.WriteNumberValue(sum.None);
        json.WriteNumberValue(sum.Pass);
        json.WriteNumberValue(sum.Inconclusive);
        json.WriteNumberValue(sum.Fail);
        json.WriteNumberValue(sum.Error);
        json.WriteEndArray();
        json.WriteFlag("interrupted"u8, ended.Interrupted);
        json.WriteTexts("not-reached"u8, ended.NotReached);
        json.WriteTexts("not-counted"u8, ended.NotCounted);
    }

    public static RunEnded Read(Fields fields, int n, long at)
    {
        var numbers = fields.Required("z"u8);
        var sum = new RollUp(
            numbers[0].GetInt32(), numbers[1].GetInt32(), numbers[2].GetInt32(), numbers[3].GetInt32(), numbers[4].GetInt32());
        if (fields.Verdict(Kind) != sum.Verdict) throw new FormatException("the verdict of the run is not the worst of its numbers");
        return new RunEnded
        {
            N = n,
            At = at,
            RollUp = sum,
            Interrupted = fields.Flag("interrupted"u8),
            NotReached = fields.Texts("not-reached"u8),
            NotCounted = fields.Texts("not-counted"u8),
        };
    }
}
