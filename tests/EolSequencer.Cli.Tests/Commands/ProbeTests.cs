using System.Globalization;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary><c>eol probe</c> in the real process, with what its user types or pipes into it.</summary>
public sealed class ProbeTests
{
    private const string Station = "sequences/demo/stations/startup.yaml";

    [Fact]
    public void A_pipe_of_commands_runs_to_its_end()
    {
        using var probe = Eol.Start("probe", "--station", Station, "--inject", "battery_voltage=12.1");
        probe.StandardInput.Write("var v = battery_voltage\nround(v.V, 1)\nread bus.vinn\nquit\nread bus.vin\n");
        probe.StandardInput.Close();
        var shown = probe.StandardOutput.ReadToEnd();
        probe.WaitForExit();

        Assert.Equal(0, probe.ExitCode);
        Assert.Contains("> round(v.V, 1)\n12.1\n", shown, StringComparison.Ordinal);
        Assert.Contains("did you mean bus.vin?", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("> read bus.vin\n", shown, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', shown);
    }

    [Fact]
    public void Ctrl_C_ends_a_watch_and_not_the_session()
    {
        using var probe = Eol.Start("probe", "--station", Station, "--clock", "real");
        probe.StandardInput.Write("watch bus.ignition for 1 h\n");
        probe.StandardInput.Flush();
        Until(probe, "bus.ignition = no");
        Eol.PressCtrlC(probe);
        Until(probe, "watched for ");
        probe.StandardInput.Write("read bus.gear\n");
        probe.StandardInput.Close();
        var rest = probe.StandardOutput.ReadToEnd();
        probe.WaitForExit();

        Assert.Contains("bus.gear = ", rest, StringComparison.Ordinal);
        Assert.Equal(0, probe.ExitCode);
    }

    [Fact]
    public void A_second_Ctrl_C_ends_the_process()
    {
        using var probe = Eol.Start("probe", "--station", Station);
        Until(probe, "'help' lists the commands");
        Eol.PressCtrlC(probe);
        Until(probe, "Ctrl-C: once more ends the program");
        Eol.PressCtrlC(probe);

        Assert.True(probe.WaitForExit(TimeSpan.FromSeconds(60)));
        Assert.NotEqual(0, probe.ExitCode);
    }

    [Theory]
    [InlineData("write either --order FILE or --vin VIN", "--order", "sequences/demo/orders/FV-100231.yaml", "--vin", "GFVRRNFP7VF100231")]
    [InlineData("--inject no_such_fault", "--inject", "no_such_fault")]
    [InlineData("ORD", "--vin", "GFVRRNFP7VF100299")]
    public void What_cannot_be_probed_is_said(string told, params string[] arguments)
    {
        var outcome = Eol.Run(["probe", "--station", Station, .. arguments]);

        Assert.Equal(2, outcome.Code);
        Assert.Contains(told, outcome.Output, StringComparison.Ordinal);
    }

    private static void Until(System.Diagnostics.Process process, string text)
    {
        while (process.StandardOutput.ReadLine() is { } line)
        {
            if (line.Contains(text, StringComparison.Ordinal)) return;
        }

        Assert.Fail($"the process ended before it said '{text}'");
    }
}
