using System.CommandLine;

namespace EolSequencer.Cli.Administering;

/// <summary><c>--most</c>: how long a list may be.</summary>
internal static class MostOption
{
    public static Option<int> Make(int usual)
    {
        var most = new Option<int>("--most") { Description = "At most so many.", HelpName = "N", DefaultValueFactory = _ => usual };
        most.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() < 1) result.AddError("--most counts from 1");
        });
        return most;
    }
}
