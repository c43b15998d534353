using EolSequencer.Records.Administration;
using EolSequencer.Records.People;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.People;

/// <summary>Every act carries a person, so who that can be must be beyond doubt.</summary>
public sealed class PersonTests : IDisposable
{
    private readonly Crew _crew = new(("rita", [Role.Repairer]), ("quinn", [Role.Quality, Role.Engineer]));

    [Fact]
    public void People_are_listed_with_what_they_may_do()
    {
        var people = _crew.Folder.OpenToRead().People.List();

        Assert.Equal(["adm", "quinn", "rita"], people.Select(person => person.Badge));
        Assert.Equal([Role.Engineer, Role.Quality], people[1].Roles);
        _crew.AssertWhole();
    }

    [Fact]
    public void The_first_administrator_is_made_once()
    {
        var why = _crew.Refused(Refusal.AgainstRule, () => _crew.Office.People.AddFirst("other", "Other Invented", "8426159"));

        Assert.Contains("an administrator adds others", why);
    }

    [Theory]
    [InlineData("rita")]
    [InlineData("quinn")]
    public void Only_an_administrator_looks_after_people(string badge)
    {
        var people = _crew.Office.People;

        _crew.Refused(Refusal.NotAllowed, () => people.Add(_crew[badge], "new1", "New Invented", [Role.Operator], Crew.Secret));
        _crew.Refused(Refusal.NotAllowed, () => people.SetRoles(_crew[badge], badge, [Role.Administrator]));
        _crew.Refused(Refusal.NotAllowed, () => people.Disable(_crew[badge], "adm", "no reason"));
        _crew.Refused(Refusal.NotAllowed, () => people.Enable(_crew[badge], badge, "no reason"));
        _crew.Refused(Refusal.NotAllowed, () => people.SetSecret(_crew[badge], "adm", "7318245"));
    }

    [Fact]
    public void A_person_sets_their_own_secret_and_the_old_one_is_dead()
    {
        Crew.Done(_crew.Office.People.SetSecret(_crew["rita"], "rita", "7318245"));

        Assert.True(_crew.Office.SignIn.With("rita", "7318245").IsDone);
        Assert.False(_crew.Office.SignIn.With("rita", Crew.Secret).IsDone);
        _crew.AssertWhole();
    }

    [Fact]
    public void A_badge_is_never_given_again()
    {
        Crew.Done(_crew.Office.People.Disable(_crew["adm"], "rita", "left the plant"));

        _crew.Refused(Refusal.AgainstRule, () => _crew.Office.People.Add(_crew["adm"], "rita", "Rita Second", [Role.Operator], Crew.Secret));
    }

    [Fact]
    public void An_administrator_is_always_left()
    {
        var people = _crew.Office.People;
        _crew.Refused(Refusal.AgainstRule, () => people.Disable(_crew["adm"], "adm", "left the plant"));
        _crew.Refused(Refusal.AgainstRule, () => people.SetRoles(_crew["adm"], "adm", [Role.Quality]));

        Crew.Done(people.SetRoles(_crew["adm"], "rita", [Role.Administrator]));
        Crew.Done(people.Disable(_crew["adm"], "adm", "left the plant"));
        _crew.Refused(Refusal.AgainstRule, () => people.SetRoles(_crew["rita"], "rita", [Role.Repairer]));
    }

    [Fact]
    public void Who_was_disabled_or_lost_the_role_cannot_act_although_signed_in()
    {
        Crew.Done(_crew.Office.People.SetRoles(_crew["adm"], "rita", [Role.Administrator]));
        var rita = _crew["rita"];
        Crew.Done(_crew.Office.People.Disable(_crew["adm"], "rita", "lost the badge"));

        Assert.Contains("lost the badge", _crew.Refused(Refusal.NotAllowed, () => _crew.Office.People.Enable(rita, "rita", "found it")));
        _crew.Refused(Refusal.NotAllowed, () => _crew.Office.SignIn.With("rita", Crew.Secret));
    }

    [Theory]
    [InlineData("", "badge")]
    [InlineData("../../etc/passwd", "badge")]
    [InlineData("a b", "badge")]
    [InlineData("x'; DROP TABLE person; --", "badge")]
    [InlineData("new\n", "badge")]
    [InlineData("new\0", "badge")]
    [InlineData("é", "badge")]
    [InlineData("-new", "badge")]
    public void What_is_no_badge_is_refused(string badge, string named) =>
        Assert.Contains(named, _crew.Refused(Refusal.Malformed, () => _crew.Office.People.Add(_crew["adm"], badge, "New Invented", [Role.Operator], Crew.Secret)));

    [Theory]
    [InlineData("")]
    [InlineData(" \t")]
    [InlineData("two\nlines")]
    [InlineData("bell\a")]
    [InlineData("turned \u202Eround")]
    [InlineData("half \uD800 a pair")]
    public void What_is_no_name_is_refused(string name) =>
        Assert.Contains("name", _crew.Refused(Refusal.Malformed, () => _crew.Office.People.Add(_crew["adm"], "new1", name, [Role.Operator], Crew.Secret)));

    [Fact]
    public void What_is_too_long_is_refused_and_the_longest_is_taken()
    {
        var people = _crew.Office.People;
        _crew.Refused(Refusal.Malformed, () => people.Add(_crew["adm"], new string('b', 41), "New Invented", [Role.Operator], Crew.Secret));
        _crew.Refused(Refusal.Malformed, () => people.Add(_crew["adm"], "new1", new string('n', 81), [Role.Operator], Crew.Secret));
        _crew.Refused(Refusal.Malformed, () => people.Disable(_crew["adm"], "rita", new string('r', 1001)));
        _crew.Refused(Refusal.Malformed, () => people.Add(_crew["adm"], "new1", "New Invented", [], Crew.Secret));

        Crew.Done(people.Add(_crew["adm"], new string('b', 40), new string('n', 80), [Role.Operator], Crew.Secret));
        Crew.Done(people.Disable(_crew["adm"], "rita", new string('r', 1000)));
    }

    [Fact]
    public void A_text_that_looks_like_sql_is_kept_as_it_is_and_does_nothing()
    {
        const string Name = "Robin'); DROP TABLE person; --";
        Crew.Done(_crew.Office.People.Add(_crew["adm"], "new1", Name, [Role.Operator], Crew.Secret));

        Assert.Contains(_crew.Folder.OpenToRead().People.List(), person => person.Name == Name);
        _crew.AssertWhole();
    }

    [Fact]
    public void Nobody_and_somebody_else_are_named_as_unknown()
    {
        Assert.Contains("person list", _crew.Refused(Refusal.Unknown, () => _crew.Office.People.SetRoles(_crew["adm"], "ghost", [Role.Operator])));
        _crew.Refused(Refusal.Unknown, () => _crew.Office.People.SetSecret(_crew["adm"], "ghost", "7318245"));
    }

    public void Dispose() => _crew.Dispose();
}
