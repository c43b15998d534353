using System.ComponentModel;
using System.Diagnostics;

namespace EolSequencer.Cli.Tests.Kit;

/// <summary>Python's standard library as a second opinion.</summary>
internal static class Python
{
    public const string Missing = "python3 is not installed";

    public static bool IsThere
    {
        get
        {
            try
            {
                return Run("pass").Code == 0;
            }
            catch (Win32Exception)
            {
                return false;
            }
        }
    }

    /// <summary>Runs a script with these arguments.</summary>
    public static (int Code, string Output) Run(string script, params string[] arguments)
    {
        var start = new ProcessStartInfo("python3", ["-I", "-X", "utf8", "-c", script, .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, process.ExitCode == 0 ? output : output + errors.Result);
    }
}
