using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>From a draft to what production may use, as engineers and quality type it.</summary>
public sealed class ApproveTests : IDisposable
{
    private const string Vin = "GFVRRNFP7VF100231";
    private const string Startup = "sequences/demo/startup/startup.yaml";

    private readonly Eol _eol = new();
    private readonly TypedActs _acts;

    public ApproveTests()
    {
        _acts = new TypedActs(_eol.Data);
        _acts.AddCrew(("edda", "engineer"), ("quinn", "quality"), ("opal", "operator"));
    }

    [Fact]
    public void A_text_is_put_forward_approved_shown_and_withdrawn()
    {
        _acts.As(1, "wants the role engineer", "opal", "approve", "submit", Startup, "--note", "first issue");
        _acts.As(0, "draft-000001: 'startup' revision 1 for orrin at startup", "edda", "approve", "submit", Startup, "--note", "first issue");
        _acts.As(1, "put forward already, as draft-000001 by edda", "edda", "approve", "submit", Startup, "--note", "first issue");
        _acts.Says(0, "waits for approval", "approve", "list");
        _acts.As(1, "a second person approves it", "edda", "approve", "give", "draft-000001", "--reason", "read");
        _acts.As(0, "a trial, from", "quinn", "approve", "give", "draft-000001", "--vin", Vin, "--reason", "one vehicle first");
        _acts.As(0, "approval-000002: draft-000001, 'startup' revision 1 for orrin at startup_1", "quinn", "approve", "give", "draft-000001", "--station", "startup_1", "--from", "2099-01-01T00:00Z", "--reason", "read");

        Assert.Equal(File.ReadAllText(Path.Combine(Repository.Root, Startup)), _acts.Says(0, "sequence: startup", "approve", "show", "draft-000001", "--file", "startup/startup.yaml"));
        using (var json = JsonDocument.Parse(_acts.Says(0, "", "approve", "list", "--json")))
        {
            Assert.Equal(Vin, json.RootElement.GetProperty("approvals")[0].GetProperty("Scope").GetProperty("Vins")[0].GetString());
        }

        _acts.As(0, "is withdrawn: misses a lamp", "edda", "approve", "withdraw", "approval-000001", "--reason", "misses a lamp");
        Assert.DoesNotContain("approval-000001:", _acts.Says(0, "approval-000002", "approve", "list"), StringComparison.Ordinal);
        Assert.Equal(0, Eol.Run("verify", "--data", _eol.Data).Code);
        var log = File.ReadAllText(Assert.Single(Directory.GetFiles(Path.Combine(_eol.Data, "log"), "acts-refused-*.log")));
        Assert.Contains("refused: approve a sequence by 'edda'", log, StringComparison.Ordinal);
        Assert.DoesNotContain(TypedActs.Secret, log, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("give", "../draft", "--reason", "read")]
    [InlineData("give", "draft-000001", "--reason", "line\nline")]
    [InlineData("give", "draft-000001", "--reason", "read", "--from", "2099-01-01T00:00")]
    [InlineData("give", "draft-000001", "--reason", "read", "--from", "2099-01-01T00:00Z", "--from-vehicle", Vin)]
    [InlineData("give", "draft-000001", "--reason", "read", "--vin", "' OR 1=1 --")]
    [InlineData("give", "draft-000001", "--reason", "read", "--station", "../x")]
    [InlineData("withdraw", "approval-000009", "--reason", "wrong")]
    [InlineData("submit", "sequences/demo/../../README.md", "--note", "no sequence")]
    [InlineData("submit", "sequences/demo/fragments/window.yaml", "--note", "a fragment")]
    public void What_is_mistyped_ends_with_2_and_changes_nothing(params string[] args)
    {
        var before = Eol.Run("verify", "--json", "--data", _eol.Data).Output;

        _acts.As(2, "error", "quinn", ["approve", .. args]);

        Assert.Equal(before, Eol.Run("verify", "--json", "--data", _eol.Data).Output);
    }

    [Fact]
    public void What_is_not_there_is_not_shown()
    {
        _acts.Says(2, "there is no such draft", "approve", "show", "draft-000001");
        _acts.As(0, "draft-000001", "edda", "approve", "submit", Startup, "--note", "first issue");
        _acts.Says(2, "it has no such file", "approve", "show", "draft-000001", "--file", "../../etc/passwd");
    }

    public void Dispose() => _eol.Dispose();
}
