namespace EolSequencer.Language.Plants;

/// <summary>What a file is, by its first key.</summary>
public enum FileKind
{
    Plant,
    VehicleType,
    DeviceKind,
    Station,
    Sequence,
    Fragment,
    Order,
    OperatorScript,
    ExpectedResults,
}
