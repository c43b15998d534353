using EolSequencer.Model.Devices;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Which readings come through binary floating point, so that their last digits mean nothing.</summary>
internal static class Inexact
{
    /// <summary>A channel whose raw value is a binary fraction.</summary>
    public static bool Is(ChannelDescription channel) => channel.Source switch
    {
        ChannelSource.Data { Form.Type: RawType.Float32 } => true,
        ChannelSource.RoutineResult { Form.Type: RawType.Float32 } => true,
        ChannelSource.Broadcast { Form.Type: RawType.Float32 } => true,
        _ => false,
    };

    /// <summary>A mean is rounded, and a count is a count of anything.</summary>
    public static bool Is(Reduction by, ChannelDescription channel) => by == Reduction.Mean || (by != Reduction.Count && Is(channel));
}
