using CsCheck;
using EolSequencer.Records.People;
using EolSequencer.Records.Tests.Samples;
using EolSequencer.Records.Verify;

namespace EolSequencer.Records.Tests.Administration;

/// <summary>Who was allowed what is asked years later too: an act that was changed, taken away, moved or put in has to show.</summary>
public sealed class ActVerifyTests : IDisposable
{
    private readonly Crew _crew = new(("rita", [Role.Repairer]), ("quinn", [Role.Quality]));

    [Fact]
    public void A_changed_act_is_found() =>
        Found("UPDATE ledger SET bytes = CAST(replace(CAST(bytes AS TEXT), 'repairer', 'operator') AS BLOB) WHERE n = 4", FindingKind.Ledger, 4, "do not give its link");

    [Fact]
    public void Another_person_behind_an_act_is_found() =>
        Found("UPDATE ledger SET bytes = CAST(replace(CAST(bytes AS TEXT), '\"by\":\"adm\"', '\"by\":\"bda\"') AS BLOB) WHERE n = 4", FindingKind.Ledger, 4, "do not give its link");

    [Fact]
    public void A_missing_act_is_found() => Found("DELETE FROM ledger WHERE n = 4", FindingKind.Ledger, 4, "missing");

    [Fact]
    public void An_act_cut_off_the_end_shows_in_the_tables() =>
        Found("DELETE FROM ledger WHERE n = 5; DELETE FROM seal WHERE ledger = 5", FindingKind.Table, null, "person 'quinn' stands in the table and in no act");

    [Fact]
    public void Two_acts_that_changed_places_are_found() =>
        Found("UPDATE ledger SET n = -1 WHERE n = 4; UPDATE ledger SET n = 4 WHERE n = 5; UPDATE ledger SET n = 5 WHERE n = -1", FindingKind.Ledger, 4, "entry 5");

    [Fact]
    public void An_added_act_is_found() =>
        Found("INSERT INTO ledger (n, hash, bytes) SELECT 6, hash, bytes FROM ledger WHERE n = 5", FindingKind.Seal, 6, "missing");

    [Fact]
    public void An_act_without_its_seal_is_found() => Found("DELETE FROM seal WHERE ledger = 4", FindingKind.Seal, 4, "missing");

    [Fact]
    public void An_act_of_no_known_kind_is_found() =>
        Found("UPDATE ledger SET bytes = CAST(replace(CAST(bytes AS TEXT), 'person-added', 'person-eaten') AS BLOB) WHERE n = 4", FindingKind.Ledger, 4, "'person-eaten' is no kind of act");

    [Theory]
    [InlineData("DELETE FROM person WHERE key = 'rita'", "person 'rita' is missing")]
    [InlineData("UPDATE person SET row = replace(row, 'repairer', 'quality') WHERE key = 'rita'", "the acts say")]
    [InlineData("INSERT INTO person (key, row) SELECT 'ghost', row FROM person WHERE key = 'rita'", "person 'ghost' stands in the table and in no act")]
    [InlineData("UPDATE person_secret SET hash = (SELECT hash FROM person_secret WHERE badge = 'rita') WHERE badge = 'quinn'", "secret of person 'quinn' is not the one")]
    [InlineData("DELETE FROM person_secret WHERE badge = 'quinn'", "secret of person 'quinn' is missing")]
    [InlineData("INSERT INTO person_secret (badge, hash) VALUES ('ghost', 'x')", "a secret is kept for 'ghost'")]
    public void What_is_read_must_say_what_the_acts_say(string sql, string text) => Found(sql, FindingKind.Table, null, text);

    [Fact]
    public void Any_changed_character_of_a_persons_row_is_found() => Gen.Select(Gen.Int[0, 9999], Gen.Char['a', 'z']).Sample(
        (place, letter) =>
        {
            var row = _crew.Folder.Ask<string>("SELECT row FROM person WHERE key = 'quinn'")[0];
            var at = place % row.Length;
            if (!char.IsLetterOrDigit(row[at]) || row[at] == letter) return;
            _crew.Folder.Tamper("UPDATE person SET row = @row WHERE key = 'quinn' AND json_valid(@row)", new { row = row[..at] + letter + row[(at + 1)..] });
            var changed = _crew.Folder.Ask<string>("SELECT row FROM person WHERE key = 'quinn'")[0] != row;

            Assert.Equal(!changed, _crew.Folder.OpenToRead().Verify().IsWhole);

            _crew.Folder.Tamper("UPDATE person SET row = @row WHERE key = 'quinn'", new { row });
        },
        iter: 100,
        threads: 1);

    public void Dispose() => _crew.Dispose();

    private void Found(string sql, FindingKind kind, long? number, string text)
    {
        _crew.AssertWhole();
        _crew.Folder.Tamper(sql);
        var report = _crew.Folder.OpenToRead().Verify();
        Assert.True(report.Findings.Any(finding => finding.Kind == kind && (number is null || finding.Number == number) && finding.Text.Contains(text)), string.Join('\n', report.Findings));
    }
}
