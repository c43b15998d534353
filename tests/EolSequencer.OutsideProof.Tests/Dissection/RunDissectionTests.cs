using System.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Bus;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.Pcap;

namespace EolSequencer.OutsideProof.Tests.Dissection;

/// <summary>
/// Frames of a whole run, written as a capture of link type 227 (LINKTYPE_CAN_SOCKETCAN) and dissected by tshark, a
/// program that shares no line with this one: it must see the same requests, the same vehicle number and no broken
/// transport message.
/// </summary>
public class RunDissectionTests
{
    private const string Tshark = "/usr/bin/tshark";

    [Fact]
    public void An_independent_dissector_sees_the_same_diagnostics()
    {
        Assert.SkipUnless(File.Exists(Tshark), "tshark is not here (Debian package tshark)");
        var file = Path.GetTempFileName();
        try
        {
            var (vin, requests) = Capture(file);
            var rows = Dissect(file);
            Assert.True(rows.Count > 0, "the dissector sees no diagnostics at all");
            Assert.True(requests == rows.Count(row => row is [_, "0x22", "0", ..]), $"{requests} requests: {string.Join(" | ", rows.Take(8).Select(row => string.Join(',', row)))}");
            Assert.Contains(rows, row => row[1] == "0x22" && row[3].Contains("0xf190", StringComparison.Ordinal));
            var numbers = rows.Where(row => row is [_, "0x22", "1", ..] && row[3].Contains("0xf190", StringComparison.Ordinal)).Select(row => row[4]).ToList();
            Assert.Contains(Convert.ToHexString(System.Text.Encoding.ASCII.GetBytes(vin)), numbers.Select(hex => hex.Replace(":", "", StringComparison.Ordinal).ToUpperInvariant()));
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static (string Vin, int Requests) Capture(string file)
    {
        var plant = Path.Combine(Repository.Root, "sequences", "demo");
        var sequence = SequenceLoader.Load(Path.Combine(plant, "startup", "startup.yaml"), ExpressionCache.None);
        var order = OrderLoader.Load(Path.Combine(plant, "orders", "FV-100231.yaml"), ExpressionCache.None).Order!;
        using var stream = File.Create(file);
        var observer = new Writer(new CanCapture(stream));
        VirtualRun.Run(new VirtualRunRequest
        {
            Run = "capture-1",
            Sequence = sequence.Sequence!,
            Plant = sequence.Plant!,
            Station = StationLoader.Load(Path.Combine(plant, "stations", "startup.yaml")).Station!,
            Order = order,
            Journal = new Nowhere(),
            Start = DateTimeOffset.UnixEpoch,
            Seed = 1,
            Observer = observer,
        });
        return (order.Vin.Text, observer.ReadRequests);
    }

    /// <summary>Columns: identifier, service, whether it is a reply, data identifiers, the reply's bytes.</summary>
    private static List<string[]> Dissect(string file)
    {
        string[] fields = ["can.id", "uds.sid", "uds.reply", "uds.rdbi.data_identifier", "uds.rdbi.data_record"];
        using var process = Process.Start(new ProcessStartInfo(
            Tshark,
            ["-r", file, "-d", "can.subdissector,iso15765", "-d", "iso15765.subdissector,uds", "-Y", "uds", "-T", "fields", .. fields.SelectMany(field => new[] { "-e", field })])
        { RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return [.. output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split('\t').Select(Bit).ToArray())];
    }

    /// <summary>Versions of the dissector write a flag as 1, 0x01 or True.</summary>
    private static string Bit(string field) => field switch { "True" or "0x01" => "1", "False" or "0x00" => "0", _ => field };

    /// <summary>Writes the diagnostic frames; broadcast signals are no transport messages and would only confuse a dissector told to look for those.</summary>
    private sealed class Writer(CanCapture capture) : IBusObserver
    {
        public int ReadRequests { get; private set; }

        public void Carried(in CanFrame frame, long stamp)
        {
            if (frame.Id.Value is < 0x700 or > 0x7EF) return;
            var data = frame.Data.Span;
            if (frame.Id.Value is not 0x7DF && data is [0x03, 0x22, ..]) ReadRequests++;
            capture.Write(frame, new TimeSpan(stamp));
        }
    }

    private sealed class Nowhere : IRunJournal
    {
        public void Append(RunEvent next) { }
    }
}
