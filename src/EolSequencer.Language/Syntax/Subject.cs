namespace EolSequencer.Language.Syntax;

/// <summary>What a text names or holds.</summary>
internal enum Subject
{
    /// <summary>Nothing that anybody could look up.</summary>
    None,
    /// <summary>C#.</summary>
    Expression,
    /// <summary>What a value must be.</summary>
    Expectation,
    /// <summary>A written value, or C# in brackets.</summary>
    Value,
    /// <summary><c>ROLE.CHANNEL</c>.</summary>
    Channel,
    /// <summary><c>ROLE.ACTION</c>.</summary>
    Action,
    Fragment,
    VehicleType,
    DeviceKind,
    StationKind,
    Station,
    Sequence,
    Order,
    OperatorScript,
    Place,
    Unit,
    ControlUnit,
}
