using System.Globalization;
using System.Text.RegularExpressions;
using EolSequencer.Simulators.ControlUnits;

namespace EolSequencer.Simulators.Tests.ControlUnits;

/// <summary>
/// The simulator has its own data dictionary; this compares it with what the demo plant's vehicle type file asks for.
/// The file is read as text: the simulator's room knows no YAML.
/// </summary>
public sealed partial class VehicleTypeFileTests
{
    private static readonly string[] Lines = File.ReadAllLines(Repository.PathOf("sequences", "demo", "vehicle-types", "orrin.yaml"));

    [Fact]
    public void Units_answer_where_the_file_asks_them()
    {
        var written = Lines.Select(line => UnitLine().Match(line)).Where(match => match.Success)
            .Select(match => (match.Groups["name"].Value, Hex(match.Groups["request"]), Hex(match.Groups["response"])));
        Assert.Equal(UnitTypes.All.Select(type => (type.Name, type.Request, type.Response)), written);
    }

    [Fact]
    public void Every_identifier_that_the_file_reads_writes_or_controls_is_served_by_its_unit()
    {
        var checkedOnes = 0;
        foreach (var (text, unit) in Sources())
        {
            foreach (var type in UnitTypes.All.Where(type => unit.Contains(type.Name)))
            {
                foreach (Match match in Identifier().Matches(text))
                {
                    var identifier = (ushort)Hex(match.Groups["id"]);
                    var record = type.Find(identifier);
                    var isServed = match.Groups["key"].Value switch
                    {
                        "routine" => type.FindRoutine(identifier) is not null,
                        "write" => record?.Write is not null,
                        "control" => record?.Take is not null,
                        _ => record is not null,
                    };
                    Assert.True(isServed, $"{type.Name} does not serve {match.Value}");
                    checkedOnes++;
                }
            }
        }

        Assert.InRange(checkedOnes, 60, 500);
    }

    [Fact]
    public void Every_lamp_mirror_and_flap_that_the_file_controls_is_served()
    {
        var text = string.Join('\n', Lines);
        foreach (var (block, unit) in new[] { ("lamp", "gateway"), ("mirror", "gateway"), ("air_door", "climate") })
        {
            var body = Regex.Match(text, $@"\n  {block}:[^\n]*(?:\n    [^\n]*)*").Value;
            var identifiers = Regex.Matches(body, "0x(?<id>22[0-9A-F]{2})");
            Assert.NotEmpty(identifiers);
            foreach (Match match in identifiers)
            {
                var record = UnitTypes.All.Single(type => type.Name == unit).Find((ushort)Hex(match.Groups["id"]));
                Assert.NotNull(record?.Take);
            }
        }
    }

    [Fact]
    public void Frames_are_sent_with_the_cycles_the_file_names()
    {
        var written = Lines.Select(line => FrameLine().Match(line)).Where(match => match.Success)
            .Select(match => (Hex(match.Groups["id"]), int.Parse(match.Groups["cycle"].Value, CultureInfo.InvariantCulture))).Distinct().Order();
        var sent = UnitTypes.All.SelectMany(type => type.Frames).Select(frame => (frame.Id, frame.CycleMs)).Distinct().Order();
        Assert.Equal(sent, written);
    }

    [Fact]
    public void Every_emissions_parameter_of_the_file_is_supported()
    {
        foreach (var match in Lines.Select(line => ObdLine().Match(line)).Where(match => match.Success))
        {
            var (time, vehicle) = Vans.New();
            var answer = new ScriptedTester(time, vehicle.Port, 0x7E0, 0x7E8).Ask("01" + match.Groups["id"].Value);
            Assert.StartsWith("41" + match.Groups["id"].Value, answer);
        }
    }

    // A channel or action with the units it belongs to: one, those listed in "by", or all.
    private static IEnumerable<(string Text, string[] Units)> Sources()
    {
        foreach (var line in Lines)
        {
            if (FromUnit().Match(line) is not { Success: true } from) continue;
            var name = from.Groups["unit"].Value;
            var by = ByList().Match(line);
            yield return (line, name != "ecus" ? [name] : by.Success ? by.Groups["list"].Value.Split(", ") : [.. UnitTypes.Names]);
        }
    }

    private static uint Hex(Group group) => uint.Parse(group.Value, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^  (?<name>\w+):\s+\{ can: \{ request: 0x(?<request>\w+), response: 0x(?<response>\w+) \}")]
    private static partial Regex UnitLine();

    [GeneratedRegex(@"\{ from: (?<unit>\w+),")]
    private static partial Regex FromUnit();

    [GeneratedRegex(@"by: \[(?<list>[^\]]+)\]")]
    private static partial Regex ByList();

    [GeneratedRegex(@"(?<key>data|routine|write|control): 0x(?<id>[0-9A-F]{4})")]
    private static partial Regex Identifier();

    [GeneratedRegex(@"frame: 0x(?<id>[0-9A-F]+),.*cycle: (?<cycle>\d+) ms")]
    private static partial Regex FrameLine();

    [GeneratedRegex(@"obd: 0x(?<id>[0-9A-F]{2})")]
    private static partial Regex ObdLine();
}
