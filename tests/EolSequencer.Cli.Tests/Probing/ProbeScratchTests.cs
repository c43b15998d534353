namespace EolSequencer.Cli.Tests.Probing;

/// <summary>C# at the prompt: what an engineer would try in a notebook, with the vehicle behind the names.</summary>
public sealed class ProbeScratchTests : IDisposable
{
    private readonly ProbedPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void What_a_line_declares_the_next_ones_see() => Assert.Contains(
        "> before.V == kept.V\nyes\n> twice(21)\n42\n> before.mV / 1000 == before.V\nyes\n",
        _plant.Session(["var before = battery_voltage", "var kept = before;", "int twice(int n) => 2 * n", "before.V == kept.V", "twice(21)", "before.mV / 1000 == before.V"]),
        StringComparison.Ordinal);

    [Fact]
    public void Values_read_as_in_sequences()
    {
        var shown = _plant.Session(
            ["0.1 + 0.2", "bus.door_ajar[\"rear\"]", "eval bus.stored_codes", "Enumerable.Range(1, 3).Select(n => n * 1.5)", "max(2.5, 7.25)", "bus.ambient", "bus.software[\"gateway\"].Length"]);

        Assert.Contains("> 0.1 + 0.2\n0.3\n", shown, StringComparison.Ordinal);
        Assert.Contains("> bus.door_ajar[\"rear\"]\nno\n", shown, StringComparison.Ordinal);
        Assert.Contains("> eval bus.stored_codes\n[camera:B1601]\n", shown, StringComparison.Ordinal);
        Assert.Contains("\n[1.5, 3.0, 4.5]\n", shown, StringComparison.Ordinal);
        Assert.Contains("> max(2.5, 7.25)\n7.25\n", shown, StringComparison.Ordinal);
        Assert.Matches(@"> bus\.ambient\n-?[0-9.]+ °C\n", shown);
        Assert.Contains(".Length\n12\n", shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1.25 * nosuch", "error: column 8: The name 'nosuch' does not exist in the current context (CS0103)")]
    [InlineData("int f(int n) => 1.5 * nosuch", "error: column 23: The name 'nosuch'")]
    [InlineData("int f(int n) { return 1.5 * nosuch; }", "error: column 29: The name 'nosuch'")]
    [InlineData("battery_voltage.A", "error: column 17: 'A' is no unit of voltage")]
    [InlineData("battery_voltage + 1.5", "error: column 1: ")]
    [InlineData("var x = ((1 + 2)", "error: column 17: ) expected (CS1026)")]
    [InlineData("throw new Exception(\"boom\")", "error: Exception: boom")]
    [InlineData("new int[2][5]", "error: ")]
    [InlineData("1m / decimal.Parse(\"0\")", "error: DivideByZeroException: ")]
    [InlineData("new string[0].First()", "error: InvalidOperationException: ")]
    public void A_fault_in_a_line_is_words_with_a_column_and_no_trace(string line, string told)
    {
        var shown = _plant.Session(["var kept = 5", line, "kept * 2"]);

        Assert.Contains($"> {line}\n{told}", shown, StringComparison.Ordinal);
        Assert.EndsWith("> kept * 2\n10\n", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_hangs_is_given_up_and_the_session_goes_on()
    {
        var shown = _plant.Session(["var kept = 5", "while (true) { System.Threading.Thread.Sleep(1); }", "kept * 2", "read bus.ignition"], limitSeconds: 1);

        Assert.Contains("given up: it has not ended within 1 s.", shown, StringComparison.Ordinal);
        Assert.EndsWith("> kept * 2\n10\n> read bus.ignition\nbus.ignition = no   bytes 00 00 00 00 00 00 00 00\n", shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("int deep(int n) => deep(n + 1)")]
    [InlineData("int deep(int n) { return 1 + deep(n + 1); }")]
    [InlineData("void deep(int n) => deep(n + 1)")]
    [InlineData("Func<int, int> deep = null; deep = n => { return 1 + deep(n + 1); }")]
    [InlineData("Func<int, int> deep = null; deep = n => 1 + deep(n + 1)")]
    [InlineData("Action<int> deep = null; deep = n => deep(n + 1)")]
    [InlineData("int Deep => 1 + Deep; int deep(int n) { return Deep; }")]
    [InlineData("class Box { public int this[int at] => 1 + this[at + 1]; } int deep(int n) { return new Box()[n]; }")]
    [InlineData("class Doll { Doll _inner = new Doll(); } Doll deep(int n) { return new Doll(); }")]
    [InlineData("class Doll { public Doll() => new Doll(); } Doll deep(int n) { return new Doll(); }")]
    [InlineData("class Set { public int At { get => At; set => At = value; } } void deep(int n) { new Set().At = n; }")]
    public void A_function_that_calls_itself_without_an_end_ends_its_line_and_not_the_process(string function) => Assert.EndsWith(
        "> deep(1)\nerror: a function of the line calls itself without an end\n> 2\n2\n", _plant.Session([function, "deep(1)", "2"]), StringComparison.Ordinal);

    /// <summary>What minds the stack is not seen otherwise.</summary>
    [Theory]
    [InlineData("new[] { 1, 2, 3 }.Select(n => n * 1.5).Sum()", "9.0")]
    [InlineData("new[] { 3, 1, 2 }.OrderBy(n => n).First()", "1")]
    [InlineData("Func<int, Func<int, int>> add = a => b => a + b; add(2)(3)", "5")]
    [InlineData("var told = new List<int>(); new List<int> { 1, 2 }.ForEach(n => told.Add(n)); told.Count", "2")]
    [InlineData("Func<string> nothing = () => null; nothing() == null ? 1 : 2", "1")]
    [InlineData("class Pair { public int A { get; set; } = 4; const int B = 3; public int Sum => A + B; } new Pair().Sum", "7")]
    public void Short_functions_work_as_written(string line, string value) => Assert.Contains($"\n{value}\n", _plant.Session([line]), StringComparison.Ordinal);

    [Fact]
    public void A_line_that_reads_for_ever_is_given_up_too() => Assert.Contains(
        "given up: it has not ended within 1 s.", _plant.Session(["while (true) { var now = battery_voltage; }", "1"], limitSeconds: 1), StringComparison.Ordinal);
}
