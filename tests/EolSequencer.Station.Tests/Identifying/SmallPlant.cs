namespace EolSequencer.Station.Tests.Identifying;

/// <summary>The smallest plant that tests a vehicle, in a folder of its own: two vehicle types, one order, one sequence.</summary>
internal sealed class SmallPlant : IDisposable
{
    public const string Vin = "TESTVXN06AA000017";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("small-plant-");

    public SmallPlant()
    {
        Put("plant.yaml", "plant: small\ntitle: Small\nzone: Etc/UTC\nday-starts: '06:00'\nroute: [startup, roller]\n");
        Put("box.yaml", VehicleType("box"));
        Put("crate.yaml", VehicleType("crate"));
        Put("orders/S-1.yaml", $"order: S-1\nvin: {Vin}\nvehicle-type: box\noptions: {{ tow: no }}\n");
        Put("brief.yaml", Sequence("brief", "box", "startup"));
        Put("station.yaml", Station("startup"));
    }

    public string PathOf(string file) => Path.Combine(_folder.FullName, file);

    public void Put(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(PathOf(file))!);
        File.WriteAllText(PathOf(file), text);
    }

    public static string Sequence(string id, string type, string kind) => $$"""
        sequence: {{id}}
        revision: 1
        vehicle-type: {{type}}
        station-kind: {{kind}}
        devices: { bus: vehicle-bus }
        steps:
          - { step: seen, judge: Is it there?, within: 10 s }

        """;

    public static string Station(string kind) => $$"""
        station: bench
        station-kind: {{kind}}
        data: ../small-plant-data
        devices:
          bus: { adapter: simulated-vehicle }

        """;

    public void Dispose() => _folder.Delete(recursive: true);

    private static string VehicleType(string id) => $$"""
        vehicle-type: {{id}}
        vin: { check-digit: require }
        options: { tow: { as: yes-no } }
        ecus:
          gateway: { can: { request: 0x710, response: 0x718 } }

        """;
}
