using System.Text;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.Tests.Plants;

/// <summary>The index looks at first lines only; it must read them as the reader of the whole file does.</summary>
public sealed class FileHeaderTests
{
    [Theory]
    [InlineData("vehicle-type: orrin\n", FileKind.VehicleType, "orrin")]
    [InlineData("# a comment\n\n---\nsequence: startup   # the first\nrevision: 1\n", FileKind.Sequence, "startup")]
    [InlineData("\uFEFFdevice-kind: 'dc-meter'\r\n", FileKind.DeviceKind, "dc-meter")]
    [InlineData("{ \"order\": \"FV-1\", \"vin\": \"x\" }", FileKind.Order, "FV-1")]
    [InlineData("{\n  \"order\": \"FV-1\",\n", FileKind.Order, "FV-1")]
    [InlineData("{ order: FV-1 }", FileKind.Order, "FV-1")]
    [InlineData("plant:\n", FileKind.Plant, "")]
    public void The_first_key_gives_kind_and_id(string text, FileKind kind, string id) =>
        Assert.Equal(new FileHeader(kind, id), FileHeader.Of(Encoding.UTF8.GetBytes(text)));

    [Theory]
    [InlineData("")]
    [InlineData("# only a comment\n")]
    [InlineData("steps: []\nsequence: late\n")]
    [InlineData("Sequence: startup\n")]
    [InlineData("just a text\n")]
    public void A_file_that_begins_otherwise_has_no_kind(string text) => Assert.Null(FileHeader.Of(Encoding.UTF8.GetBytes(text)));
}
