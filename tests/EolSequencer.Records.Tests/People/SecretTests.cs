using System.Text;
using EolSequencer.Records.Administration;
using EolSequencer.Records.People;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.People;

/// <summary>A PIN has few digits: guessing it must be stopped, and nothing that leaves the computer may help to guess it.</summary>
public sealed class SecretTests : IDisposable
{
    private readonly Crew _crew = new(("rita", [Role.Repairer]));

    private SignIn SignIn => _crew.Office.SignIn;

    [Theory]
    [InlineData("")]
    [InlineData("12345")]
    [InlineData("123456")]
    [InlineData("987654")]
    [InlineData("111111")]
    [InlineData("121212")]
    [InlineData("password1")]
    [InlineData("good enough\n")]
    public void A_weak_secret_is_refused_and_not_repeated(string secret)
    {
        var why = _crew.Refused(Refusal.Malformed, () => _crew.Office.People.SetSecret(_crew["rita"], "rita", secret));

        if (secret.Length > 0) Assert.DoesNotContain(secret, why);
    }

    [Theory]
    [InlineData("731824")]
    [InlineData("ten letter")]
    public void The_shortest_good_ones_are_taken(string secret)
    {
        Crew.Done(_crew.Office.People.SetSecret(_crew["rita"], "rita", secret));

        Assert.True(SignIn.With("rita", secret).IsDone);
    }

    [Fact]
    public void A_badge_is_no_secret_and_the_longest_password_is_128()
    {
        Crew.Done(_crew.Office.People.Add(_crew["adm"], "long-badge-1", "L Invented", [Role.Operator], "other than that"));
        _crew.Refused(Refusal.Malformed, () => _crew.Office.People.SetSecret(_crew["adm"], "long-badge-1", "LONG-badge-1"));
        _crew.Refused(Refusal.Malformed, () => _crew.Office.People.SetSecret(_crew["adm"], "rita", string.Concat(Enumerable.Repeat("abc", 43))));
        Crew.Done(_crew.Office.People.SetSecret(_crew["adm"], "rita", string.Concat(Enumerable.Repeat("abcd", 32))));
    }

    [Fact]
    public void The_fifth_wrong_one_locks_the_badge_for_five_minutes_even_for_the_right_one()
    {
        for (var tries = 1; tries <= 5; tries++) Assert.False(SignIn.With("rita", "000000").IsDone);
        Assert.Contains("locked until 2026-11-03T06:05:00", SignIn.With("rita", Crew.Secret).Refused!.Why);

        _crew.Clock.Now += TimeSpan.FromMinutes(5) - TimeSpan.FromTicks(1);
        Assert.False(SignIn.With("rita", Crew.Secret).IsDone);
        _crew.Clock.Now += TimeSpan.FromTicks(1);
        Assert.True(SignIn.With("rita", Crew.Secret).IsDone);
        _crew.AssertWhole();
    }

    [Fact]
    public void Four_wrong_ones_are_forgotten_with_the_right_one()
    {
        for (var round = 0; round < 2; round++)
        {
            for (var tries = 1; tries <= 4; tries++) Assert.False(SignIn.With("rita", "000000").IsDone);
            Assert.True(SignIn.With("rita", Crew.Secret).IsDone);
        }

        Assert.Equal(2, _crew.Acts().Count(act => act == "sign-in-cleared"));
        Assert.Equal(8, _crew.Acts().Count(act => act == "sign-in-refused"));
        _crew.AssertWhole();
    }

    [Fact]
    public void Attempts_on_a_locked_badge_do_not_grow_the_ledger()
    {
        for (var tries = 1; tries <= 5; tries++) SignIn.With("rita", "000000");
        var head = _crew.Folder.OpenToRead().Head();
        for (var tries = 1; tries <= 5; tries++) SignIn.With("rita", "000000");

        Assert.Equal(head, _crew.Folder.OpenToRead().Head());
        Assert.Equal(10, _crew.Notes.Count);
    }

    [Fact]
    public void An_administrator_frees_a_locked_badge()
    {
        for (var tries = 1; tries <= 5; tries++) SignIn.With("rita", "000000");
        Crew.Done(_crew.Office.People.Enable(_crew["adm"], "rita", "typed on the wrong keys"));

        Assert.True(SignIn.With("rita", Crew.Secret).IsDone);
    }

    [Fact]
    public void A_wrong_secret_and_a_badge_that_nobody_has_are_answered_alike_and_the_log_keeps_neither()
    {
        Assert.Equal(SignIn.With("rita", "442200").Refused!.Why, SignIn.With("556677", "442200").Refused!.Why);
        Assert.Equal(SignIn.With("rita", "442200").Refused!.Why, SignIn.With("no badge \0", new string('x', 100_000)).Refused!.Why);

        Assert.All(_crew.Notes, note => Assert.DoesNotContain("442200", note));
        Assert.All(_crew.Notes, note => Assert.DoesNotContain("556677", note));
    }

    [Fact]
    public void Neither_the_ledger_nor_what_is_listed_has_a_secret_or_its_hash()
    {
        var hash = _crew.Folder.Ask<string>("SELECT hash FROM person_secret WHERE badge = 'rita'")[0];
        var ledger = string.Concat(_crew.Folder.Ask<byte[]>("SELECT bytes FROM ledger ORDER BY n").Select(Encoding.UTF8.GetString));

        Assert.DoesNotContain(hash, ledger);
        Assert.DoesNotContain(Crew.Secret, ledger);
        Assert.DoesNotContain(Crew.Secret, string.Concat(_crew.Folder.Ask<string>("SELECT row FROM person")));
        Assert.NotEqual(hash, _crew.Folder.Ask<string>("SELECT hash FROM person_secret WHERE badge = 'adm'")[0]);
    }

    public void Dispose() => _crew.Dispose();
}
