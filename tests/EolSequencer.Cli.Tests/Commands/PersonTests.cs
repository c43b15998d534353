using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>People are looked after from the command line, where a secret on show would be read by others.</summary>
public sealed class PersonTests : IDisposable
{
    private const string AdministratorSecret = "842615";
    private const string Secret = "973158";

    private readonly Eol _eol = new();

    [Fact]
    public void The_first_start_makes_an_administrator_from_the_environment_and_without_it_nobody()
    {
        var nobody = Person(new() { ["EOL_SECRET"] = "admin", ["EOL_NEW_SECRET"] = Secret }, "add", "rita", "--name", "Rita Invented", "--role", "repairer", "--by", "admin");
        Assert.True(nobody.Code == 2, nobody.ToString());
        Assert.Contains("EOL_ADMINISTRATOR", nobody.Output, StringComparison.Ordinal);

        var added = Add("rita", "repairer");
        Assert.True(added.Code == 0, added.ToString());
        using var list = JsonDocument.Parse(Eol.Run("person", "list", "--json", "--data", _eol.Data).Output);
        Assert.Equal(["adm", "rita"], list.RootElement.EnumerateArray().Select(person => person.GetProperty("badge").GetString()));
        Assert.Equal(0, Eol.Run("verify", "--data", _eol.Data).Code);
    }

    [Theory]
    [InlineData("adm")]
    [InlineData("adm:123456")]
    [InlineData(":842615")]
    public void An_administrator_that_cannot_be_is_not_made(string variable)
    {
        var refused = Person(new() { ["EOL_ADMINISTRATOR"] = variable, ["EOL_SECRET"] = "123456" }, "enable", "adm", "--reason", "why not", "--by", "adm");

        Assert.True(refused.Code == 2, refused.ToString());
        Assert.Equal("[]", Eol.Run("person", "list", "--json", "--data", _eol.Data).Output.Trim());
    }

    [Fact]
    public void Who_may_not_is_refused_with_1_and_the_log_says_so_without_secrets()
    {
        Add("rita", "repairer");
        var wrongRole = Person(new() { ["EOL_SECRET"] = Secret }, "role", "rita", "--role", "administrator", "--by", "rita");
        var wrongSecret = Person(new() { ["EOL_SECRET"] = "31415926" }, "role", "rita", "--role", "administrator", "--by", "adm");

        Assert.Equal((1, 1), (wrongRole.Code, wrongSecret.Code));
        Assert.Contains("wants the role administrator; rita Invented has repairer", wrongRole.Output, StringComparison.Ordinal);
        var log = File.ReadAllText(Assert.Single(Directory.GetFiles(Path.Combine(_eol.Data, "log"), "acts-refused-*.log")));
        Assert.Equal(2, log.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.All([Secret, AdministratorSecret, "31415926"], secret => Assert.DoesNotContain(secret, log, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("add", "../x", "--name", "X Invented", "--role", "operator")]
    [InlineData("add", "x1", "--name", "two\nlines", "--role", "operator")]
    [InlineData("add", "x1", "--name", "X Invented", "--role", "emperor")]
    [InlineData("add", "x1", "--name", "X Invented")]
    [InlineData("disable", "ghost", "--reason", "no such person")]
    [InlineData("disable", "adm", "--reason", "")]
    [InlineData("drop", "adm")]
    public void What_is_mistyped_ends_with_2_and_changes_nothing(params string[] args)
    {
        Add("rita", "repairer");
        var before = Eol.Run("person", "list", "--json", "--data", _eol.Data).Output;

        var refused = Person(new() { ["EOL_SECRET"] = AdministratorSecret, ["EOL_NEW_SECRET"] = Secret }, [.. args, "--by", "adm"]);

        Assert.True(refused.Code == 2, refused.ToString());
        Assert.Equal(before, Eol.Run("person", "list", "--json", "--data", _eol.Data).Output);
    }

    [Fact]
    public void Looking_makes_no_record()
    {
        Assert.Equal(2, Eol.Run("person", "list", "--data", _eol.Data).Code);
        Assert.False(Directory.Exists(_eol.Data));
    }

    public void Dispose() => _eol.Dispose();

    private Eol.Outcome Add(string badge, string role) => Person(
        new() { ["EOL_ADMINISTRATOR"] = $"adm:{AdministratorSecret}", ["EOL_SECRET"] = AdministratorSecret, ["EOL_NEW_SECRET"] = Secret },
        "add", badge, "--name", $"{badge} Invented", "--role", role, "--by", "adm");

    private Eol.Outcome Person(Dictionary<string, string> environment, params string[] args) =>
        Eol.Run(environment, ["person", .. args, "--data", _eol.Data]);
}
