using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.History;
using EolSequencer.Records.People;

namespace EolSequencer.Records.Administration;

/// <summary>The word in the ledger for each kind of act, and how its content is written and read.</summary>
internal static class ActKinds
{
    private static readonly (string Word, JsonTypeInfo Form)[] All =
    [
        ("key-made", ActJson.Default.KeyMade),
        ("schema", ActJson.Default.SchemaMade),
        ("person-added", ActJson.Default.PersonAdded),
        ("person-roles", ActJson.Default.PersonRolesSet),
        ("person-disabled", ActJson.Default.PersonDisabled),
        ("person-enabled", ActJson.Default.PersonEnabled),
        ("person-secret", ActJson.Default.PersonSecretSet),
        ("sign-in-refused", ActJson.Default.SignInRefused),
        ("sign-in-cleared", ActJson.Default.SignInCleared),
        ("nonconformity-opened", ActJson.Default.NonconformityOpened),
        ("nonconformity-retested", ActJson.Default.NonconformityRetested),
        ("nonconformity-inspected", ActJson.Default.NonconformityInspected),
        ("repair-done", ActJson.Default.RepairDone),
        ("concession-given", ActJson.Default.ConcessionGiven),
        ("hold-placed", ActJson.Default.HoldPlaced),
        ("hold-lifted", ActJson.Default.HoldLifted),
        ("release-signed", ActJson.Default.ReleaseSigned),
        ("vehicle-returned", ActJson.Default.VehicleReturned),
        ("order-changed", ActJson.Default.OrderChanged),
        ("vin-corrected", ActJson.Default.VinCorrected),
        ("sequence-submitted", ActJson.Default.SequenceSubmitted),
        ("sequence-approved", ActJson.Default.SequenceApproved),
        ("approval-withdrawn", ActJson.Default.ApprovalWithdrawn),
    ];

    public static IEnumerable<string> Words => All.Select(kind => kind.Word);

    public static string WordOf(Act act) => Of(act).Word;

    public static void Write(Utf8JsonWriter json, Act act) => JsonSerializer.Serialize(json, act, Of(act).Form);

    /// <summary>The act of a kind with this content; a <see cref="JsonException"/> or <see cref="FormatException"/> says why it is none.</summary>
    public static Act Read(string word, JsonElement content)
    {
        foreach (var kind in All)
        {
            if (kind.Word == word) return (Act)content.Deserialize(kind.Form)!;
        }

        throw new FormatException($"'{word}' is no kind of act that this version knows");
    }

    private static (string Word, JsonTypeInfo Form) Of(Act act) => All.Single(kind => kind.Form.Type == act.GetType());
}
