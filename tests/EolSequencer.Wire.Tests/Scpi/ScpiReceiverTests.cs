using System.Text;
using CsCheck;
using EolSequencer.Wire.Scpi;
using EolSequencer.Wire.TextLines;

namespace EolSequencer.Wire.Tests.Scpi;

// A stream has no messages of its own: what an answer is must not hang on how its bytes came.
public class ScpiReceiverTests
{
    [Fact, Trait("case", "SER-03")]
    public void An_answer_ends_at_its_terminator_whatever_the_pieces()
    {
        var receiver = new ScpiReceiver(LineEnd.Lf);
        receiver.Add("+1.23"u8);
        Assert.False(receiver.TryTake(out _));
        Assert.Equal("+1.23", Encoding.ASCII.GetString(receiver.Pending));
        receiver.Add("4E+01\r\n"u8);
        Assert.Equal("+1.234E+01", Next(receiver));
        Assert.False(receiver.TryTake(out _));
    }

    [Fact, Trait("case", "SER-04")]
    public void A_carriage_return_before_the_line_feed_is_no_part_of_the_answer()
    {
        var receiver = new ScpiReceiver(LineEnd.Lf);
        receiver.Add("READY\r\n\r\n1.25\n"u8);
        Assert.Equal(["READY", "", "1.25"], [Next(receiver), Next(receiver), Next(receiver)]);
    }

    [Fact]
    public void A_terminator_inside_a_block_ends_nothing()
    {
        var receiver = new ScpiReceiver(LineEnd.Lf);
        byte[] data = [(byte)'\n', 0, (byte)'#', (byte)'\n', 7];
        var answers = new List<byte[]>();
        foreach (var one in (byte[])[.. BlockData.Make(data), (byte)'\n', (byte)'5', (byte)'\n'])
        {
            receiver.Add([one]);
            if (receiver.TryTake(out var answer)) answers.Add(answer.Value);
        }

        Assert.Equal([BlockData.Make(data), "5"u8.ToArray()], answers);
        Assert.Equal(data, BlockData.Read(answers[0]).Value);
        Assert.Equal(0, receiver.Pending.Length);
    }

    [Fact]
    public void A_carriage_return_at_the_end_of_a_block_is_data()
    {
        var receiver = new ScpiReceiver(LineEnd.Lf);
        receiver.Add("#12a\r\n#12b\r\r\n"u8);
        Assert.Equal(["#12a\r", "#12b\r"], [Next(receiver), Next(receiver)]);
    }

    [Fact]
    public void A_block_without_length_goes_up_to_the_end()
    {
        var receiver = new ScpiReceiver(LineEnd.Lf);
        receiver.Add("#0abc\n"u8);
        Assert.True(receiver.TryTake(out var answer));
        Assert.Equal("abc"u8.ToArray(), BlockData.Read(answer.Value).Value);
    }

    [Fact]
    public void A_number_sign_in_a_text_is_no_block()
    {
        var receiver = new ScpiReceiver(LineEnd.Lf);
        receiver.Add("lot#9,#x\n#\n"u8);
        Assert.Equal(["lot#9,#x", "#"], [Next(receiver), Next(receiver)]);
    }

    [Fact]
    public void Any_answers_in_any_pieces_come_out_as_they_were_sent() =>
        (from blocks in Gen.Byte.Array[0, 40].Array[1, 5]
         from cut in Gen.Int[1, 9]
         from end in Gen.OneOf(LineEnd.Lf, LineEnd.CrLf, LineEnd.Cr)
         select (blocks, cut, end))
        .Sample(c =>
        {
            var receiver = new ScpiReceiver(c.end);
            var came = new List<byte[]>();
            foreach (var piece in c.blocks.SelectMany(block => (byte[])[.. BlockData.Make(block), .. c.end]).Chunk(c.cut))
            {
                receiver.Add(piece);
                while (receiver.TryTake(out var answer)) came.Add(BlockData.Read(answer.Value).Value);
            }

            Assert.Equal(c.blocks, came);
        });

    [Fact]
    public void What_never_ends_is_given_up()
    {
        var receiver = new ScpiReceiver(LineEnd.Lf);
        receiver.Add(new byte[ScpiReceiver.Longest + 1]);
        Assert.True(receiver.TryTake(out var answer));
        Assert.Contains("without an end", answer.Fault, StringComparison.Ordinal);
        Assert.Equal(0, receiver.Pending.Length);
    }

    private static string Next(ScpiReceiver receiver)
    {
        Assert.True(receiver.TryTake(out var answer));
        return Encoding.ASCII.GetString(answer.Value);
    }
}
