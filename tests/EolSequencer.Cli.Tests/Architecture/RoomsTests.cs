using System.Reflection;

namespace EolSequencer.Cli.Tests.Architecture;

/// <summary>Arrows between rooms point down only; a wrong one would let the engine learn about files or the record.</summary>
public class RoomsTests
{
    public static TheoryData<string, string[]> Rooms => new()
    {
        { "Model", [] },
        { "Language", ["Model"] },
        { "Engine", ["Model"] },
        { "Wire", ["Model"] },
        { "Devices", ["Model", "Wire"] },
        { "Records", ["Model"] },
        { "Statistics", ["Model"] },
        { "Simulators", ["Model", "Wire"] },
        { "Station", ["Devices", "Engine", "Language", "Model", "Records", "Wire"] },
        { "Rehearsal", ["Devices", "Engine", "Language", "Model", "Records", "Simulators", "Station", "Statistics", "Wire"] },
    };

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_sees_only_the_rooms_below_it(string room, string[] allowed) =>
        Assert.Empty(ReferencesOf(room).Where(name => name.StartsWith("EolSequencer.", StringComparison.Ordinal))
            .Select(name => name["EolSequencer.".Length..]).Except(allowed));

    [Theory]
    [InlineData("Engine", "YamlDotNet", "Microsoft.CodeAnalysis", "Microsoft.Data.Sqlite", "Microsoft.AspNetCore")]
    [InlineData("Model", "YamlDotNet", "Microsoft.CodeAnalysis", "Microsoft.Data.Sqlite", "UnitsNet")]
    [InlineData("Records", "YamlDotNet", "Microsoft.CodeAnalysis", "Microsoft.AspNetCore", "UnitsNet")]
    [InlineData("Wire", "System.Net.Sockets", "System.IO.Ports", "Microsoft.Data.Sqlite")]
    public void A_room_does_without_what_belongs_elsewhere(string room, params string[] foreign) =>
        Assert.DoesNotContain(ReferencesOf(room), name => foreign.Any(one => name.StartsWith(one, StringComparison.Ordinal)));

    [Fact]
    public void Every_room_is_in_the_picture()
    {
        var built = Directory.GetFiles(AppContext.BaseDirectory, "EolSequencer.*.dll").Select(Path.GetFileNameWithoutExtension)
            .Where(name => !name!.EndsWith(".Tests", StringComparison.Ordinal)).Select(name => name!["EolSequencer.".Length..]).Order();
        Assert.Equal(Rooms.Select(row => row.Data.Item1).Order(), built);
    }

    private static IEnumerable<string> ReferencesOf(string room) =>
        Assembly.Load($"EolSequencer.{room}").GetReferencedAssemblies().Select(reference => reference.Name!);
}
