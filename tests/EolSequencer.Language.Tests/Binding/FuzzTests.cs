using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>Whatever stands in a file, an author gets messages and never a stack trace.</summary>
public sealed class FuzzTests : IDisposable
{
    private static readonly string[] Junk =
    [
        "[]", "{}", "''", "yes", "1:30", "0123", "(", "{ a: b }", "[a, [b]]", "limits.x", "limits.wheel[", "..", "bus.", ".bus", "bus.door[", "bus.door[]",
        "results.", "5 s", "-1 s", "99999999999999999999 h", "text()", "uint0", "0x", "1+", "64+64", "equals", "only []", "matches /(/", "(x) y", "ecus", "vehicle",
    ];

    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_check_of_a_spoilt_plant_ends_with_findings_at_most(int seed)
    {
        var random = new Random(seed);
        var cache = ExpressionCache.In(_plant.PathOf(".cache"));
        var files = Directory.GetFiles(_plant.Root, "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToArray();
        for (var round = 0; round < 8; round++)
        {
            var path = files[random.Next(files.Length)];
            var good = File.ReadAllText(path);
            File.WriteAllText(path, Spoil(good, random));

            var fault = Record.Exception(() => PlantChecker.Check([_plant.Root], cache));

            Assert.True(fault is null, $"seed {seed}, round {round}: {fault}\n{File.ReadAllText(path)}");
            File.WriteAllText(path, good);
        }
    }

    private static string Spoil(string text, Random random)
    {
        var lines = text.Split('\n').ToList();
        for (var slips = random.Next(1, 4); slips > 0; slips--)
        {
            var at = random.Next(lines.Count);
            var colon = lines[at].IndexOf(':', StringComparison.Ordinal);
            switch (random.Next(4))
            {
                case 0: lines[at] = lines[random.Next(lines.Count)]; break;
                case 1 when lines[at].Length > 0: lines[at] = lines[at].Remove(random.Next(lines[at].Length), 1); break;
                case 2 when colon > 0: lines[at] = $"{lines[at][..(colon + 1)]} {Junk[random.Next(Junk.Length)]}"; break;
                default: lines[at] = new string(' ', random.Next(8)) + lines[at].TrimStart(); break;
            }
        }

        return string.Join('\n', lines);
    }
}
