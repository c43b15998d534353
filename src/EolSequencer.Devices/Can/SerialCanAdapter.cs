using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.Serial;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Wire.SerialCan;

namespace EolSequencer.Devices.Can;

/// <summary><c>serial-can</c>: a vehicle bus on a CAN interface that speaks ASCII over a serial line.</summary>
/// <param name="keys">Opens security levels of control units; null: none can be opened.</param>
public sealed class SerialCanAdapter(IKeyAlgorithm? keys) : IDeviceAdapter
{
    private const int UsualBaud = 115_200;

    /// <inheritdoc/>
    public AdapterDescription Description { get; } = new(
        "serial-can",
        "a vehicle bus on a CAN interface that speaks ASCII over a serial line",
        [
            .. SerialForm.Settings(UsualBaud),
            new("speed", new SettingForm.BitRate([.. SerialCanText.Rates.Reverse()]), "bits per second on the bus") { IsRequired = true },
            new("answers", new SettingForm.YesNo(), "whether the interface answers commands and frames; no: a frame counts as sent once the serial port has it") { Usual = "yes" },
            .. BusSettings.All,
        ]);

    /// <inheritdoc/>
    public LinkUse LinkOf(CheckedSettings settings) => SerialForm.LinkOf(settings);

    /// <inheritdoc/>
    public async ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel)
    {
        var serial = SerialForm.Of(request.Settings, UsualBaud);
        var form = new SerialCanForm(request.Settings.BitRate("speed")!.Value, request.Settings.YesNo("answers") ?? true);
        var (port, fault) = await SerialCanPort.OpenAsync(
            async listener => await SerialLine.OpenAsync(serial, request.Time, listener, cancel), request.Time, form, request.Note, cancel);
        return port is null
            ? AdapterOpening.Refused(fault!)
            : AdapterOpening.Open(new VehicleBusDevice(
                request.Binding.Role, port, request.Time, request.Fitted, keys, BusSettings.TimingOf(request.Settings), note: request.Note, link: port));
    }
}
