using System.Collections.Immutable;
using EolSequencer.Records.Administration;
using EolSequencer.Records.People;

namespace EolSequencer.Records.Tests.Samples;

/// <summary>A record with invented people who may act, and what was refused to them.</summary>
internal sealed class Crew : IDisposable
{
    public const string Secret = "973158";

    private readonly Dictionary<string, SignedIn> _signedIn = [];

    public Crew(params (string Badge, Role[] Roles)[] people)
    {
        Office = DataFolder.Open(Folder.Path, Clock) is FolderResult<DataFolder>.Opened { Folder: var opened } ? opened.Administer(Notes.Add) : throw new InvalidOperationException("no folder");
        Done(Office.People.AddFirst("adm", "Ada Invented", Secret));
        foreach (var (badge, roles) in people) Done(Office.People.Add(this["adm"], badge, $"{badge} Invented", [.. roles], Secret));
    }

    public TempFolder Folder { get; } = new();

    public Clock Clock { get; } = new();

    public List<string> Notes { get; } = [];

    public RecordAdministration Office { get; }

    /// <summary>Somebody, signed in.</summary>
    public SignedIn this[string badge] => _signedIn.TryGetValue(badge, out var known) ? known : _signedIn[badge] = Done(Office.SignIn.With(badge, Secret));

    public static T Done<T>(Outcome<T> outcome)
        where T : class
    {
        Assert.True(outcome.IsDone, outcome.Refused?.Why);
        return outcome.Value!;
    }

    /// <summary>What was refused must be noted and have changed nothing.</summary>
    public string Refused<T>(Refusal reason, Func<Outcome<T>> act)
        where T : class
    {
        var (before, notes) = (Folder.OpenToRead().Head(), Notes.Count);
        var outcome = act();
        Assert.False(outcome.IsDone, "it was done");
        Assert.Equal(reason, outcome.Refused!.Reason);
        Assert.Equal(before, Folder.OpenToRead().Head());
        Assert.True(Notes.Count == notes + 1 && Notes[^1].Contains(outcome.Refused.Why, StringComparison.Ordinal), "it was not noted");
        Assert.DoesNotContain(Notes[^1], char.IsControl);
        return outcome.Refused.Why;
    }

    /// <summary>The kinds of the acts in the ledger, oldest first.</summary>
    public ImmutableArray<string> Acts() => [.. Folder.Ask<string>("SELECT json_extract(CAST(bytes AS TEXT), '$.act') FROM ledger WHERE CAST(bytes AS TEXT) LIKE '%\"act\":%' ORDER BY n")];

    public void AssertWhole()
    {
        var report = Folder.OpenToRead().Verify();
        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
    }

    public void Dispose() => Folder.Dispose();
}
