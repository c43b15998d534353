using System.Collections.Immutable;
using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.Diagnostics;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>The settings that every adapter of a vehicle bus has, whatever link it uses.</summary>
public static class BusSettings
{
    private static readonly SettingForm Wait = new SettingForm.Time(TimeSpan.FromMilliseconds(1), TimeSpan.FromSeconds(60));

    /// <summary>How long control units are waited for.</summary>
    public static ImmutableArray<AdapterSetting> All { get; } =
    [
        new("p2", Wait, "how long a control unit is waited for, whatever it states (ISO 14229-1)") { Usual = "100 ms, or what the unit states" },
        new("p2-star", Wait, "the same after response pending") { Usual = "5050 ms, or what the unit states" },
    ];

    /// <summary>The times that a station file fixes; those of the standard where it fixes none.</summary>
    public static DiagnosticTiming TimingOf(CheckedSettings settings)
    {
        var (p2, p2Star) = (settings.Time("p2"), settings.Time("p2-star"));
        var usual = new DiagnosticTiming();
        return usual with { P2 = p2 ?? usual.P2, P2Star = p2Star ?? usual.P2Star, TakesStatedTimes = p2 is null && p2Star is null };
    }
}
