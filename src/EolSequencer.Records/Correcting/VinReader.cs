using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Correcting;

/// <summary>The corrected numbers of a record. From any thread.</summary>
public sealed class VinReader
{
    private readonly IActReader _record;

    internal VinReader(IActReader record) => _record = record;

    /// <summary>The number that a vehicle has by now; the same one when it was never corrected.</summary>
    public string Current(string vin) => _record.Read(view => new VinTrail(view.Corrections).Current(vin));

    /// <summary>Every correction that holds, by the wrong number.</summary>
    public ImmutableArray<VinCorrection> List() => _record.Read(view => view.Corrections.All().Where(row => row.Corrected is not null).Select(VinCorrection.Of).ToImmutableArray());
}
