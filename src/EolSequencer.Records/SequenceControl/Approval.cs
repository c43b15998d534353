using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.SequenceControl;

/// <summary>That a text may be used in production.</summary>
/// <param name="Draft">Id of what was put forward.</param>
/// <param name="Hash">Of all files of the text, see <see cref="ContentHash"/>.</param>
/// <param name="By">Badge of who gave it.</param>
/// <param name="Withdrawn">Why it was withdrawn; null: it stands.</param>
public sealed record Approval(
    string Id, string Draft, string Sequence, int Revision, string VehicleType, string StationKind, string Hash, ApprovalScope Scope, string Reason, string? By, string? Withdrawn)
{
    private const int ShortHash = 12;

    /// <summary>For people: <c>'startup' revision 4 (text 3fa9c1d2e004, approval-000007)</c>.</summary>
    public string Describe() => $"'{Sequence}' revision {Revision} (text {Short(Hash)}, {Id})";

    /// <summary>The beginning of a content hash, as people compare it.</summary>
    public static string Short(string hash) => hash[..Math.Min(ShortHash, hash.Length)];

    internal static Approval Of(ApprovalRow row)
    {
        var approved = row.Approved;
        return new Approval(
            row.Id, approved.Draft, approved.Sequence, approved.Revision, approved.VehicleType, approved.StationKind, approved.Hash,
            new ApprovalScope(approved.Station, UtcText.Read(approved.From), approved.FromVehicle, approved.Vins), approved.Reason, row.By, row.Withdrawn);
    }
}
