using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Binding.Devices;

/// <summary>What is wrong with a device kind.</summary>
public static class DeviceCodes
{
    public static readonly DiagnosticCode ReservedKind = Error("DEV001",
        "A device kind that the vehicle type describes", "describe the channels of vehicle-bus in the vehicle type");

    public static readonly DiagnosticCode ToAndWith = Error("DEV002",
        "An action that is both set and done", "keep  to  for one value, or  with  for named values");

    public static readonly DiagnosticCode PolledEvent = Error("DEV003",
        "A channel whose results arrive once and that is polled as well", "keep  event  or  every");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
