namespace EolSequencer.Cli.Tests.Probing;

/// <summary>An engineer at a vehicle tries things: whatever is typed, the answer is a line of text and the session goes on.</summary>
public sealed class ProbeSessionTests : IDisposable
{
    private readonly ProbedPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void Channels_are_read_with_their_bytes()
    {
        var shown = Session("read bus.software[gateway] battery_voltage", "read bus.door_ajar");

        Assert.Contains("bus.software[gateway] = FV7-GWB-0412   bytes 62 F1 95 46", shown, StringComparison.Ordinal);
        Assert.Matches(@"meter\.battery_voltage = 12\.\d+ V", shown);
        Assert.Contains("bus.door_ajar[rear] = no", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("bus.door_ajar[rear_second]", Session("read bus.software[tow]"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("read bus.ignitoin", "there is no channel 'bus.ignitoin'; did you mean bus.ignition?")]
    [InlineData("read software[gatway]", "there is no index 'gatway'; did you mean gateway?")]
    [InlineData("read bus.software[gateway", "the bracket is never closed")]
    [InlineData("read bus.ignition[left]", "it has no index")]
    [InlineData("read", "write  read CHANNEL")]
    [InlineData("watch bus.ignition for 5 bananas", "'5 bananas' does not fit")]
    [InlineData("watch bus.ignition 0 times", "'0' is no number of times")]
    [InlineData("do bus.horn", "bus.horn is set: write  do bus.horn to VALUE  (yes or no)")]
    [InlineData("do bus.horn to loud", "'loud' does not fit; wanted is yes or no")]
    [InlineData("do bus.blower to 80 km/h", "'80 km/h' does not fit; wanted is a number with its unit, such as  2 %")]
    [InlineData("do meter.zer", "did you mean meter.zero?")]
    [InlineData("do noise.start", "noise.start wants time (time)")]
    [InlineData("do noise.start with length 5 s", "noise.start takes no 'length'")]
    [InlineData("bytes many", "'many' is no number from 1 to 2000")]
    [InlineData("list nothing_of_this_name", "nothing has 'nothing_of_this_name' in it")]
    [InlineData("read noise.level", "no result came within 10 s")]
    public void A_slip_is_answered_with_what_to_write(string line, string told)
    {
        var shown = Session(line, "read bus.ignition");

        Assert.Contains($"error: ", shown, StringComparison.Ordinal);
        Assert.Contains(told, shown, StringComparison.Ordinal);
        Assert.Contains("bus.ignition = no", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_silent_unit_is_told_with_its_cause()
    {
        var shown = _plant.Session(["read bus.software[brakes]", "bus.software[\"brakes\"]", "read bus.software[gateway]"], faults: "unit_silent=brakes");

        Assert.Contains("bus.software[brakes] = no value: silent (", shown, StringComparison.Ordinal);
        Assert.Contains("error: bus.software[brakes] has no value: silent (", shown, StringComparison.Ordinal);
        Assert.Contains("bus.software[gateway] = FV7-GWB-0412", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void What_moves_or_energises_is_done_only_after_a_yes()
    {
        var shown = Session("do bus.extended_session", "do bus.horn to yes", "no", "bytes", "do bus.horn to yes", "yes", "bytes");

        Assert.Contains("bus.extended_session: confirmed", shown, StringComparison.Ordinal);
        Assert.Contains("CAUTION: bus.horn switches voltage on.", shown, StringComparison.Ordinal);
        var (refused, agreed) = (shown.IndexOf("bus.horn: left alone", StringComparison.Ordinal), shown.IndexOf("bus.horn: confirmed", StringComparison.Ordinal));
        Assert.InRange(refused, 1, agreed);
        Assert.DoesNotContain("InputOutputControl", shown[..agreed], StringComparison.Ordinal);
        Assert.Contains("gateway <- 2F 22 01 03 01   InputOutputControlByIdentifier", shown[agreed..], StringComparison.Ordinal);
        Assert.EndsWith("CAUTION: you have done bus.horn; look whether anything is still on or moving before you leave.\n", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_caution_that_nobody_answers_is_no_yes() =>
        Assert.Contains("bus.horn: left alone", Session("do bus.horn to yes"), StringComparison.Ordinal);

    /// <summary>The answer has 20 bytes, so it comes in three frames (ISO 15765-2: first frame 6 bytes, consecutive frames 7).</summary>
    [Fact]
    public void Bytes_are_shown_as_messages_and_as_frames()
    {
        var shown = Session("bytes on", "read bus.vin", "bytes off", "bytes 2", "bytes frames 200", "read bus.gear");

        Assert.Contains("gateway <- 22 F1 90   ReadDataByIdentifier\n", shown, StringComparison.Ordinal);
        Assert.Contains($"gateway -> 62 F1 90 {string.Join(' ', Enumerable.Repeat("20", 17))}   ReadDataByIdentifier, answer\n", shown, StringComparison.Ordinal);
        Assert.Contains("718  10 14 62 F1 90 20 20 20", shown, StringComparison.Ordinal);
        Assert.Contains("718  21 20 20 20 20 20 20 20", shown, StringComparison.Ordinal);
        Assert.Contains("718  22 20 20 20 20 20 20 20", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refusal_is_told_in_words_among_the_bytes() => Assert.Contains(
        "brakes -> 7F 22 22   ReadDataByIdentifier refused: 22 conditionsNotCorrect",
        _plant.Session(["read bus.software[brakes]", "bytes"], faults: "reads_refused=brakes"),
        StringComparison.Ordinal);

    [Fact]
    public void A_watch_shows_changes_and_ends()
    {
        var shown = Session("watch bus.ignition meter.battery_voltage for 1 s", "watch meter.battery_voltage 3 times", "watch bus.ignition");

        Assert.Contains("s  bus.ignition = no\n", shown, StringComparison.Ordinal);
        Assert.Contains("watched for 1 s\n", shown, StringComparison.Ordinal);
        Assert.Contains("watched for 10 s\n", shown, StringComparison.Ordinal);
        Assert.Equal(3, shown.Split("3 times\n")[1].Split("watched")[0].Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public void A_line_that_a_person_types_ends_a_watch_and_does_nothing_else()
    {
        var person = new Typist(("> ", "watch meter.battery_voltage"), ("meter.battery_voltage = ", "quit"), ("watched for ", "read bus.gear"), ("bus.gear = ", "quit"));

        _plant.Run(person, person.Screen, isTyped: true, isReal: true);

        Assert.Contains("watched for ", person.Shown, StringComparison.Ordinal);
        Assert.Contains("bus.gear = ", person.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_session_in_real_time_goes_the_same_way()
    {
        var shown = _plant.Session(["watch bus.ignition for 200 ms", "var v = battery_voltage", "v.V > 12", "read bus.vin"], isReal: true);

        Assert.Contains("real time", shown, StringComparison.Ordinal);
        Assert.Contains("bus.ignition = no", shown, StringComparison.Ordinal);
        Assert.Contains("> v.V > 12\nyes\n", shown, StringComparison.Ordinal);
        Assert.Contains("bus.vin = ", shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Nothing_of_it_enters_a_record(bool hasRecord)
    {
        if (hasRecord)
        {
            Directory.CreateDirectory(_plant.Data);
            File.WriteAllText(Path.Combine(_plant.Data, "ledger"), "as it was");
        }

        var before = _plant.Everything();
        Session("read battery_voltage", "do bus.horn to yes", "yes", "var x = battery_voltage", "x", "watch bus.ignition for 1 s", "bytes");

        Assert.Equal(before, _plant.Everything());
        Assert.Equal(hasRecord, Directory.Exists(_plant.Data));
    }

    [Fact]
    public void Help_names_every_command()
    {
        var shown = Session("help");

        Assert.All(["read", "watch", "do", "bytes", "list", "eval", "help", "quit"], word => Assert.Contains($"\n  {word} ", shown, StringComparison.Ordinal));
    }

    private string Session(params string[] lines) => _plant.Session(lines);
}
