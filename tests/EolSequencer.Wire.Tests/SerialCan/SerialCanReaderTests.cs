using System.Text;
using CsCheck;
using EolSequencer.Wire.SerialCan;

namespace EolSequencer.Wire.Tests.SerialCan;

/// <summary>Bytes come in portions of the line's choice; a frame must not be lost or made up by where they are cut.</summary>
[Trait("case", "CAN-03")]
public class SerialCanReaderTests
{
    [Fact]
    public void Two_frames_are_read_wherever_the_bytes_are_cut_and_a_line_feed_counts_for_nothing()
    {
        var bytes = "t7E980341055AAAAAAAAA\r\nt1232BEEF\r"u8.ToArray();
        for (var first = 0; first <= bytes.Length; first++)
        {
            for (var second = first; second <= bytes.Length; second++)
            {
                var reader = new SerialCanReader();
                var found = Lines(reader, bytes[..first]).Concat(Lines(reader, bytes[first..second])).Concat(Lines(reader, bytes[second..])).ToList();
                Assert.Equal(["7E9#0341055AAAAAAAAA", "123#BEEF"], found.Select(line => line.Frame.ToString()));
            }
        }
    }

    [Fact]
    public void A_line_without_an_end_costs_no_other()
    {
        var endless = new string('A', 500);
        var kinds = Lines(new SerialCanReader(), Encoding.ASCII.GetBytes($"t123{endless}\rt1232BEEF\r")).Select(line => line.Kind);
        Assert.Equal([SerialCanKind.Garbled, SerialCanKind.Frame], kinds);
    }

    [Fact]
    public void A_lost_character_costs_one_line()
    {
        var whole = "t1232BEEF\r"u8.ToArray();
        for (var lost = 0; lost < whole.Length - 1; lost++)
        {
            byte[] cut = [.. whole[..lost], .. whole[(lost + 1)..], .. "t4561AA\r"u8];
            var lines = Lines(new SerialCanReader(), cut);
            Assert.Equal(2, lines.Count);
            Assert.NotEqual(SerialCanKind.Frame, lines[0].Kind);
            Assert.Equal("456#AA", lines[1].Frame.ToString());
        }
    }

    [Fact]
    public void Any_bytes_end_in_lines_and_the_next_frame_is_read() => Gen.Byte.Array[0, 200].Sample(bytes =>
    {
        var reader = new SerialCanReader();
        Lines(reader, bytes);
        Lines(reader, "\r"u8.ToArray());
        Assert.Equal("123#BEEF", Assert.Single(Lines(reader, "t1232BEEF\r"u8.ToArray())).Frame.ToString());
    });

    private static List<SerialCanLine> Lines(SerialCanReader reader, byte[] bytes)
    {
        var lines = new List<SerialCanLine>();
        foreach (var one in bytes)
        {
            if (reader.Take(one, out var line)) lines.Add(line);
        }

        return lines;
    }
}
