using System.Globalization;

namespace EolSequencer.Language.Tests.Fuzzing;

/// <summary>
/// Whatever is written anywhere, reading it ends, says the same each time, and a refusal has its place. The usual size runs
/// with the tests; the environment variable <c>EOL_FUZZ_INPUTS</c> asks for more, <c>EOL_FUZZ_SEED</c> for others.
/// </summary>
public sealed class FuzzTests(ITestOutputHelper output)
{
    private const int UsualInputs = 10_000;

    public static TheoryData<string> Targets() => [.. FuzzTargets.All.Select(target => target.Name)];

    [Theory]
    [MemberData(nameof(Targets))]
    public void Every_input_is_read_or_refused_at_its_place(string name)
    {
        var target = FuzzTargets.All.Single(target => target.Name == name);
        var inputs = Setting("EOL_FUZZ_INPUTS", UsualInputs) * target.Share / 100;
        var run = new FuzzRun(target, inputs, (uint)Setting("EOL_FUZZ_SEED", 1));

        run.Run();

        output.WriteLine($"{name}: {inputs} inputs, {run.Accepted} taken");
        Assert.InRange(run.Accepted, 1, inputs - 1);
    }

    private static int Setting(string name, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out var number) ? number : usual;
}
