using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Records.Tests.Samples;

/// <summary>Checked sequences as sequence control sees them: what they are for, and the texts they were made from.</summary>
internal static class SampleSequence
{
    private static readonly DeviceKind Bus = new(
        DeviceKind.VehicleBus, false, ImmutableSortedDictionary<string, ChannelDescription>.Empty, ImmutableSortedDictionary<string, ActionDescription>.Empty);

    /// <param name="fragment">The text of a file that the sequence uses; another text makes it another sequence text.</param>
    public static CheckedSequence Of(int revision, string fragment = "fragment: lamps\n", string id = "startup", string type = "orrin", string kind = "startup") => new()
    {
        Id = id,
        Title = LocalText.Plain(id),
        Revision = revision,
        VehicleType = new VehicleType { Id = type, Title = LocalText.Plain(type), CheckDigit = CheckDigitRule.Off, Options = [], ControlUnits = [], Bus = Bus },
        StationKind = kind,
        Roles = [],
        Steps = [],
        Sources = Sources(("startup.yaml", $"sequence: {id}\nrevision: {revision}\n"), ("plant.yaml", "plant: fennholt\n"), ("lamps.yaml", fragment)),
        CompiledHash = "",
    };

    public static ImmutableArray<SourceCopy> Sources(params (string Path, string Text)[] files) =>
        [.. files.Select(file => new SourceCopy(file.Path, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(file.Text))), file.Text))];
}
