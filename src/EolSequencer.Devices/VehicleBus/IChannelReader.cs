using EolSequencer.Model.Ports;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>Reads channels of one kind of source.</summary>
internal interface IChannelReader
{
    /// <summary>One value.</summary>
    ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel);

    /// <summary>One reading of each index, in that order.</summary>
    ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel);
}
