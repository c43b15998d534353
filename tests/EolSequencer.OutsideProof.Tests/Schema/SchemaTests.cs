using System.Diagnostics;
using System.Text.Json;
using System.Text.RegularExpressions;
using EolSequencer.Language.Schema;

namespace EolSequencer.OutsideProof.Tests.Schema;

/// <summary>
/// The JSON Schema in the hands of others: Ajv, an independent validator, behind the YAML 1.2 loader of the npm package
/// yaml. It must find nothing in good files, and in bad ones what a schema can say, in the author's line.
/// </summary>
public sealed partial class SchemaTests
{
    private sealed record Fault(int Line, string Says);

    [Fact]
    public void Every_file_of_the_demo_plant_and_of_the_good_test_plant_is_valid()
    {
        string[] files = [.. Yaml(Path.Combine(Repository.Root, "sequences")), .. Yaml(Path.Combine(Documents, "good"))];
        Assert.NotEmpty(files);
        foreach (var (file, faults) in Validate(files)) Assert.True(faults.Length == 0, $"{file}: {string.Join("; ", faults.Take(3))}");
    }

    [Fact]
    public void Every_stated_fault_of_a_bad_file_is_found_or_is_beyond_a_schema()
    {
        var missed = new HashSet<string>();
        var found = 0;
        foreach (var (file, faults) in Validate(Yaml(Path.Combine(Documents, "bad"))))
        {
            var stated = Stated(File.ReadAllLines(file)).ToList();
            var alarms = faults.Where(fault => stated.All(one => one.Line != fault.Line)).ToList();
            Assert.True(alarms.Count == 0, $"{file}: nothing is wrong in {string.Join("; ", alarms.Take(3))}");
            foreach (var (line, code) in stated)
            {
                if (faults.Any(fault => fault.Line == line)) found++;
                else missed.Add(code);
                Assert.True(SchemaLimits.Reasons.ContainsKey(code) || !missed.Contains(code), $"{file}:{line}: the validator does not see {code}");
            }
        }

        Assert.True(found > 60, $"only {found} stated faults are seen");
        Assert.Empty(SchemaLimits.Reasons.Keys.Except(missed)); // a reason that no document needs is out of date
    }

    [Theory]
    [InlineData("sequence: a b\n", "pattern")]
    [InlineData("sequance: a\n", "required")]
    [InlineData("operator-script: a\nanswers: { x: nothin }\n", "allowed values")]
    [InlineData("device-kind: a\nchannels: { level: { as: number, event: 'yes please' } }\n", "allowed values")]
    public void A_fault_is_told_in_words(string text, string word)
    {
        var file = Path.Combine(Path.GetTempPath(), $"eol-schema-{Guid.NewGuid():N}.yaml");
        try
        {
            File.WriteAllText(file, text);
            Assert.Contains(Validate([file])[file], fault => fault.Says.Contains(word, StringComparison.Ordinal));
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>What a document states under the spot: <c># ^^^ expect error SEQ014</c>, about the line above.</summary>
    private static IEnumerable<(int Line, string Code)> Stated(string[] lines)
    {
        var about = 1;
        for (var number = 1; number <= lines.Length; number++)
        {
            var line = lines[number - 1];
            if (Statement().Match(line) is { Success: true } statement) yield return (about, statement.Groups[1].Value);
            else if (line.Trim().Length > 0) about = number;
        }
    }

    [GeneratedRegex(@"^\s*#.*\bexpect \w+ ([A-Z]{3}\d{3})")]
    private static partial Regex Statement();

    private static Dictionary<string, Fault[]> Validate(IReadOnlyList<string> files)
    {
        var folder = Path.Combine(Repository.Root, "tests", "EolSequencer.OutsideProof.Tests", "Schema");
        Assert.SkipUnless(Directory.Exists(Path.Combine(folder, "node_modules")), "the validator is not here (tests/run.sh installs it: npm install in tests/EolSequencer.OutsideProof.Tests/Schema)");
        var schema = Path.Combine(Path.GetTempPath(), $"eol-schema-{Guid.NewGuid():N}.json");
        try
        {
            File.WriteAllText(schema, SchemaDocument.Text());
            using var node = Process.Start(new ProcessStartInfo("node", [Path.Combine(folder, "validate.js"), schema, .. files]) { RedirectStandardOutput = true })!;
            var output = node.StandardOutput.ReadToEnd();
            node.WaitForExit();
            Assert.Equal(0, node.ExitCode);
            return JsonSerializer.Deserialize<Dictionary<string, Fault[]>>(output, JsonSerializerOptions.Web)!;
        }
        finally
        {
            File.Delete(schema);
        }
    }

    private static List<string> Yaml(string folder) => [.. Directory.GetFiles(folder, "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    private static string Documents => Path.Combine(Repository.Root, "tests", "EolSequencer.Language.Tests", "Binding", "Documents");
}
