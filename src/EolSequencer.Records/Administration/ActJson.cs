using System.Text.Json.Serialization;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.History;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.People;
using EolSequencer.Records.Release;
using EolSequencer.Records.SequenceControl;

namespace EolSequencer.Records.Administration;

/// <summary>Acts, and the rows folded from them, as JSON: fields in declared order, what is not there is left out.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(KeyMade))]
[JsonSerializable(typeof(SchemaMade))]
[JsonSerializable(typeof(PersonAdded))]
[JsonSerializable(typeof(PersonRolesSet))]
[JsonSerializable(typeof(PersonDisabled))]
[JsonSerializable(typeof(PersonEnabled))]
[JsonSerializable(typeof(PersonSecretSet))]
[JsonSerializable(typeof(SignInRefused))]
[JsonSerializable(typeof(SignInCleared))]
[JsonSerializable(typeof(PersonRow))]
[JsonSerializable(typeof(NonconformityOpened))]
[JsonSerializable(typeof(NonconformityRetested))]
[JsonSerializable(typeof(NonconformityInspected))]
[JsonSerializable(typeof(RepairDone))]
[JsonSerializable(typeof(ConcessionGiven))]
[JsonSerializable(typeof(HoldPlaced))]
[JsonSerializable(typeof(HoldLifted))]
[JsonSerializable(typeof(ReleaseSigned))]
[JsonSerializable(typeof(NonconformityRow))]
[JsonSerializable(typeof(HoldRow))]
[JsonSerializable(typeof(ReleaseRow))]
[JsonSerializable(typeof(VehicleReturned))]
[JsonSerializable(typeof(OrderChanged))]
[JsonSerializable(typeof(VinCorrected))]
[JsonSerializable(typeof(VinCorrectionRow))]
[JsonSerializable(typeof(SequenceSubmitted))]
[JsonSerializable(typeof(SequenceApproved))]
[JsonSerializable(typeof(ApprovalWithdrawn))]
[JsonSerializable(typeof(DraftRow))]
[JsonSerializable(typeof(ApprovalRow))]
internal sealed partial class ActJson : JsonSerializerContext;
