namespace EolSequencer.Language.Plants;

/// <summary>The words for kinds of file.</summary>
public static class FileKinds
{
    /// <summary>Every kind, in the order in which a reader meets them.</summary>
    public static IReadOnlyList<FileKind> All { get; } = Enum.GetValues<FileKind>();

    /// <summary>The first key of such a file, such as <c>vehicle-type</c>.</summary>
    public static string Key(this FileKind kind) => kind switch
    {
        FileKind.Plant => "plant",
        FileKind.VehicleType => "vehicle-type",
        FileKind.DeviceKind => "device-kind",
        FileKind.Station => "station",
        FileKind.Sequence => "sequence",
        FileKind.Fragment => "fragment",
        FileKind.Order => "order",
        FileKind.OperatorScript => "operator-script",
        FileKind.ExpectedResults => "expected-results",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "there are nine kinds of file"),
    };

    /// <summary>How a message names it: <c>vehicle type</c>.</summary>
    public static string Word(this FileKind kind) => kind switch
    {
        FileKind.VehicleType => "vehicle type",
        FileKind.DeviceKind => "device kind",
        FileKind.OperatorScript => "operator script",
        FileKind.ExpectedResults => "file of expected results",
        _ => kind.Key(),
    };

    /// <summary>As <see cref="Word"/> with its article: <c>an order</c>.</summary>
    public static string OneWord(this FileKind kind) => kind is FileKind.Order or FileKind.OperatorScript ? $"an {kind.Word()}" : $"a {kind.Word()}";

    /// <summary>The kind of a first key, or null for any other word.</summary>
    public static FileKind? Of(string key)
    {
        foreach (var kind in All)
        {
            if (kind.Key() == key) return kind;
        }

        return null;
    }
}
