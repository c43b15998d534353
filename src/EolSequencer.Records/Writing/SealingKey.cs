using EolSequencer.Records.Chain;

namespace EolSequencer.Records.Writing;

/// <summary>A station key and the number under which the record knows its public half.</summary>
internal sealed record SealingKey(long Id, StationKey Key);
