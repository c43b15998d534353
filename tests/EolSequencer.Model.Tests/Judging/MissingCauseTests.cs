using EolSequencer.Model.Judging;

namespace EolSequencer.Model.Tests.Judging;

/// <summary>A dead control unit on a healthy bus is the vehicle's fault, a dead bus is not: the line between fail and error.</summary>
public class MissingCauseTests
{
    public static TheoryData<MissingCause, bool> Causes => new()
    {
        { MissingCause.LinkDown, false },
        { MissingCause.Silent, true },
        { MissingCause.Refused, true },
        { MissingCause.InvalidMarker, true },
        { MissingCause.Stale, false },
        { MissingCause.Overload, false },
        { MissingCause.NotFinite, false },
        { MissingCause.ShortAnswer, false },
        { MissingCause.Late, false },
    };

    [Fact]
    public void The_rows_above_are_all_causes() => Assert.Equal(Enum.GetValues<MissingCause>().Length, Causes.Count);

    [Theory, MemberData(nameof(Causes))]
    public void A_missing_reading_is_an_error_unless_the_author_and_the_link_say_otherwise(MissingCause cause, bool maySpeakOfVehicle)
    {
        Assert.Equal(Verdict.Error, cause.Measured(ifMissingFail: false, linkAnsweredOther: true));
        Assert.Equal(Verdict.Error, cause.Measured(ifMissingFail: true, linkAnsweredOther: false));
        Assert.Equal(maySpeakOfVehicle ? Verdict.Fail : Verdict.Error, cause.Measured(ifMissingFail: true, linkAnsweredOther: true));
    }

    [Theory]
    [InlineData(MissingCause.LinkDown, "link-down")]
    [InlineData(MissingCause.Silent, "silent")]
    [InlineData(MissingCause.Refused, "refused")]
    [InlineData(MissingCause.InvalidMarker, "invalid-marker")]
    [InlineData(MissingCause.Stale, "stale")]
    [InlineData(MissingCause.Overload, "overload")]
    [InlineData(MissingCause.NotFinite, "not-finite")]
    [InlineData(MissingCause.ShortAnswer, "short-answer")]
    [InlineData(MissingCause.Late, "late")]
    public void Each_cause_has_its_word(MissingCause cause, string word)
    {
        Assert.Equal(word, cause.Word());
        Assert.True(MissingCauses.TryParse(word, out var back));
        Assert.Equal(cause, back);
        Assert.False(MissingCauses.TryParse(word.ToUpperInvariant(), out _));
    }
}
