using System.Runtime.CompilerServices;

namespace EolSequencer.Language.Tests.Loading;

/// <summary>The plant that comes with the program.</summary>
internal static class DemoPlant
{
    public static string Folder { get; } = Path.GetFullPath(Path.Combine(Here(), "../../../sequences/demo"));

    public static string StartUp { get; } = Path.Combine(Folder, "startup", "startup.yaml");

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
