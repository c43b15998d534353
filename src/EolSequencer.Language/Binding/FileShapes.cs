using EolSequencer.Language.Binding.Devices;
using EolSequencer.Language.Binding.Orders;
using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Binding.Sequences;
using EolSequencer.Language.Binding.Stations;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.ExpectedResults;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Scripts;
using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Binding;

/// <summary>What a file of each kind looks like: the shapes that its reader reads it by.</summary>
internal static class FileShapes
{
    /// <summary>The keys of a file.</summary>
    public static MapShape Of(FileKind kind) => kind switch
    {
        FileKind.Plant => PlantBinder.File,
        FileKind.VehicleType => VehicleTypeBinder.File,
        FileKind.DeviceKind => DeviceKindBinder.File,
        FileKind.Station => StationBinder.File,
        FileKind.Sequence => SequenceHead.File,
        FileKind.Fragment => FragmentFile.File,
        FileKind.Order => OrderBinder.File,
        FileKind.OperatorScript => ScriptBinder.File,
        FileKind.ExpectedResults => ExpectedFileBinder.File,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "there are nine kinds of file"),
    };

    /// <summary>
    /// What any file looks like, by its kind. The first key that is a kind decides: expected results name a station, a sequence
    /// and an order as well, so they come first; sequences and orders name a vehicle type, so that comes last.
    /// </summary>
    public static ValueForm Any { get; } = new ValueForm.Cases("a file", [.. FileKinds.All.OrderBy(Turn).Select(kind => (kind.Key(), Forms.Map(Of(kind))))], IsKind: true);

    private static int Turn(FileKind kind) => kind switch
    {
        FileKind.ExpectedResults => 0,
        FileKind.VehicleType => 2,
        _ => 1,
    };
}
