using System.Collections.Immutable;
using System.Globalization;
using System.IO.Ports;
using EolSequencer.Devices.Adapters;

namespace EolSequencer.Devices.Serial;

/// <summary>Which port, and how characters are sent on it.</summary>
/// <param name="Port">A name that stays when it is plugged in again, such as <c>/dev/serial/by-id/…</c>, or <c>COM3</c>.</param>
/// <param name="Baud">Bits per second.</param>
public sealed record SerialForm(string Port, int Baud)
{
    /// <summary>7 or 8.</summary>
    public int DataBits { get; init; } = 8;

    public Parity Parity { get; init; }

    public StopBits StopBits { get; init; } = StopBits.One;

    public Handshake FlowControl { get; init; }

    /// <summary>How long the port may take to accept bytes before it counts as gone.</summary>
    public TimeSpan WriteLimit { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>The settings of an adapter on a serial port.</summary>
    /// <param name="baud">What holds when a station file does not say.</param>
    public static ImmutableArray<AdapterSetting> Settings(int baud) =>
    [
        new("port", new SettingForm.Text("the name of a serial port", "/dev/serial/by-id/usb-0403_6001-if00-port0"), "the serial port, by a name that stays when it is plugged in again") { IsRequired = true },
        new("baud", new SettingForm.Whole(50, 4_000_000, "9600"), "bits per second") { Usual = baud.ToString(CultureInfo.InvariantCulture) },
        new("data-bits", new SettingForm.Whole(7, 8, "8"), "data bits of a character") { Usual = "8" },
        new("parity", new SettingForm.OneOf("none", "even", "odd"), "parity bit of a character") { Usual = "none" },
        new("stop-bits", new SettingForm.Whole(1, 2, "1"), "stop bits of a character") { Usual = "1" },
        new("flow-control", new SettingForm.OneOf("none", "rts-cts", "xon-xoff"), "how the other side holds this one up") { Usual = "none" },
    ];

    /// <summary>What a station file says.</summary>
    /// <param name="baud">What holds when it does not say.</param>
    public static SerialForm Of(CheckedSettings settings, int baud) => new(settings.Text("port")!, (int)(settings.Whole("baud") ?? baud))
    {
        DataBits = (int)(settings.Whole("data-bits") ?? 8),
        Parity = settings.Text("parity") switch { "even" => Parity.Even, "odd" => Parity.Odd, _ => Parity.None },
        StopBits = settings.Whole("stop-bits") == 2 ? StopBits.Two : StopBits.One,
        FlowControl = settings.Text("flow-control") switch { "rts-cts" => Handshake.RequestToSend, "xon-xoff" => Handshake.XOnXOff, _ => Handshake.None },
    };

    /// <summary>The port as what a role holds; two names of one device are one.</summary>
    public static LinkUse LinkOf(CheckedSettings settings)
    {
        var port = settings.Text("port")!;
        var device = File.Exists(port) ? File.ResolveLinkTarget(port, returnFinalTarget: true)?.FullName : null;
        return new LinkUse($"serial port {device ?? port}", IsShared: false);
    }
}
