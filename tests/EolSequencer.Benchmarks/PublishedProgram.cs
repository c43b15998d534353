using System.Diagnostics;

namespace EolSequencer.Benchmarks;

/// <summary><c>eol</c> as it is handed out: published with code made ready (ReadyToRun), for the runtime of this computer.</summary>
internal static class PublishedProgram
{
    /// <param name="folder">Where it is put.</param>
    /// <returns>The program's full path.</returns>
    public static string Make(string folder)
    {
        using var publish = Process.Start(new ProcessStartInfo(
            "dotnet",
            ["publish", Path.Combine(Repository.Root, "src", "EolSequencer.Cli"), "-c", "Release", "-r", "linux-x64", "--self-contained", "false", "-p:PublishReadyToRun=true", "-o", folder, "-v", "quiet", "--nologo"]))!;
        publish.WaitForExit();
        return publish.ExitCode == 0 ? Path.Combine(folder, "eol") : throw new InvalidOperationException("publishing failed");
    }
}
