namespace EolSequencer.Cli.Demo;

/// <summary>Where the demo plant is: below the working folder, or in the repository this program was built in.</summary>
internal static class DemoPlant
{
    private static readonly string InRepository = Path.Combine("sequences", "demo");

    /// <summary>Its folder, or null when there is none.</summary>
    public static string? Find() =>
        Above(Directory.GetCurrentDirectory()) is { } near ? near : Above(AppContext.BaseDirectory);

    private static string? Above(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
        {
            var plant = Path.Combine(folder.FullName, InRepository);
            if (File.Exists(Path.Combine(plant, "plant.yaml"))) return Path.GetRelativePath(Directory.GetCurrentDirectory(), plant);
        }

        return null;
    }
}
