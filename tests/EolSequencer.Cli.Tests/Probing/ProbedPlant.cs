using System.Collections.Immutable;
using EolSequencer.Cli.Probing;
using EolSequencer.Devices.Adapters;
using EolSequencer.Language.Expressions;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Cli.Tests.Probing;

/// <summary>A copy of the demo plant in a folder of its own, with the data folder of its station beside it, and sessions on it.</summary>
internal sealed class ProbedPlant : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("probed-plant-");

    public ProbedPlant()
    {
        var demo = Repository.PathOf("sequences", "demo");
        foreach (var file in Directory.GetFiles(demo, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(_folder.FullName, "works", "sequences", "demo", Path.GetRelativePath(demo, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    /// <summary>Where the station's file says that the record goes.</summary>
    public string Data => Path.Combine(_folder.FullName, "eol-data");

    public string Station => Path.Combine(_folder.FullName, "works", "sequences", "demo", "stations", "startup.yaml");

    /// <summary>Every file and folder with its time and length.</summary>
    public IReadOnlyList<string> Everything() =>
        [.. _folder.EnumerateFileSystemInfos("*", SearchOption.AllDirectories).Select(one => $"{one.FullName} {one.LastWriteTimeUtc:O} {(one as FileInfo)?.Length}").Order(StringComparer.Ordinal)];

    /// <summary>What a session shows whose lines come from a pipe.</summary>
    public string Session(IEnumerable<string> lines, bool isReal = false, double limitSeconds = 10, params string[] faults)
    {
        var output = new StringWriter();
        Run(new StringReader(string.Join('\n', lines)), output, false, isReal, limitSeconds, faults);
        return output.ToString();
    }

    /// <summary>Runs a session to its end.</summary>
    public void Run(TextReader input, TextWriter output, bool isTyped, bool isReal, double limitSeconds = 10, params string[] faults)
    {
        var identified = Identify.Vehicle(new IdentifyRequest { StationFile = Station, Vin = "GFVRRNFP7VF100231", Cache = SharedCache.Expressions });
        Assert.True(identified.Vehicle is not null, string.Join('\n', identified.Diagnostics));
        ImmutableArray<InjectedFault> injected = [.. faults.Select(fault => FaultText.Parse(fault).Fault!)];
        var choices = new ProbeChoices(identified.Vehicle, injected, 1, isReal, StandardAdapters.Make(null)) { LineLimit = TimeSpan.FromSeconds(limitSeconds) };
        Assert.Equal(0, new ProbeRun(choices, input, output, isTyped).Run());
    }

    public void Dispose() => _folder.Delete(recursive: true);
}

/// <summary>Compiled expressions of the demo plant, kept for the tests of one run.</summary>
internal static class SharedCache
{
    public static ExpressionCache Expressions { get; } = ExpressionCache.In(Path.Combine(AppContext.BaseDirectory, "expressions"));
}
