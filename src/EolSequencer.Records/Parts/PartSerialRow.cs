using EolSequencer.Model.Events;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Records.Parts;

/// <summary>What the table <c>part_serial</c> holds of a step result.</summary>
internal readonly record struct PartSerialRow(string Mode, string Vin, string Part, string At, string Serial)
{
    /// <summary>The row; null when the result names no part.</summary>
    public static PartSerialRow? Of(RunMode mode, string vin, Judged judged)
    {
        if (mode == RunMode.Check || judged.Part is not { } name || judged.Criteria is not [{ Value: { } serial }, ..]) return null;
        var part = PartName.Read(name);
        return new PartSerialRow(mode.Word(), vin, part.Kind, part.At, serial);
    }
}
