namespace EolSequencer.Cli.Tests.Kit;

/// <summary>People who act from the command line on a data folder, each with the same invented secret.</summary>
internal sealed class TypedActs(string data)
{
    public const string Secret = "973158";

    /// <summary>Makes the first administrator <c>adm</c>, and a person for each role.</summary>
    public void AddCrew(params (string Badge, string Role)[] crew)
    {
        foreach (var (badge, role) in crew)
        {
            With(0, badge, new() { ["EOL_ADMINISTRATOR"] = $"adm:{Secret}", ["EOL_SECRET"] = Secret, ["EOL_NEW_SECRET"] = Secret }, "person", "add", badge, "--name", badge, "--role", role, "--by", "adm");
        }
    }

    /// <summary>Somebody acts; ends with this code and says this.</summary>
    public string As(int code, string text, string badge, params string[] args) => With(code, text, new() { ["EOL_SECRET"] = Secret }, [.. args, "--by", badge]);

    /// <summary>Nobody acts, or nobody who says who they are.</summary>
    public string Says(int code, string text, params string[] args) => With(code, text, [], args);

    public string With(int code, string text, Dictionary<string, string> environment, params string[] args)
    {
        var outcome = Eol.Run(environment, [.. args, "--data", data]);
        Assert.True(outcome.Code == code, $"{string.Join(' ', args)}: {outcome}");
        Assert.Contains(text, string.Join(' ', outcome.Output.Split((char[])[' ', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        return outcome.Output;
    }
}
