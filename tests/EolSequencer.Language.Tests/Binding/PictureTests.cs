using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>A picture that is none would be an empty frame in front of an operator.</summary>
public sealed class PictureTests : IDisposable
{
    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Theory]
    [InlineData("a.png", "89504E470D0A1A0A00", null)]
    [InlineData("a.png", "FFD8FFE0", "SEQ036")]
    [InlineData("a.jpg", "FFD8FFE0", null)]
    [InlineData("a.jpeg", "47494638", "SEQ036")]
    [InlineData("a.webp", "524946460000000057454250", null)]
    [InlineData("a.webp", "5249464600000000574156", "SEQ036")]
    [InlineData("a.svg", "3C73766720", null)]
    [InlineData("a.svg", "", "SEQ036")]
    [InlineData("a.gif", "47494638", "SEQ033")]
    [InlineData("../a.png", "89504E470D0A1A0A00", "SEQ033")]
    public void A_picture_is_what_its_name_says(string path, string content, string? code)
    {
        if (!path.StartsWith("..", StringComparison.Ordinal)) File.WriteAllBytes(_plant.Put(path, ""), Convert.FromHexString(content));
        var sequence = _plant.Put("sequences/odd.yaml", $"sequence: odd\nrevision: 1\nvehicle-type: teal\nstation-kind: startup\ndevices: {{ bus: vehicle-bus }}\nsteps: [ {{ step: a, judge: It is lit., picture: {path} }} ]\n");

        Assert.Equal(code is null ? [] : [code], SequenceLoader.Load(sequence, ExpressionCache.None).Diagnostics.Select(finding => finding.Code.Id));
    }
}
