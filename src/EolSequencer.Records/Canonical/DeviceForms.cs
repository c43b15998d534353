using System.Text.Json;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Canonical;

/// <summary><see cref="DeviceLost"/>: <c>device-lost</c> role, <c>d</c> first cause.</summary>
internal static class DeviceLostForm
{
    public static ReadOnlySpan<byte> Kind => "device-lost"u8;

    public static void Write(Utf8JsonWriter json, DeviceLost lost)
    {
        json.WriteString(Kind, lost.Role);
        json.WriteString("d"u8, lost.Cause);
    }

    public static DeviceLost Read(Fields fields, int n, long at) =>
        new() { N = n, At = at, Role = fields.Text(Kind), Cause = fields.Text("d"u8) };
}

/// <summary><see cref="DeviceBack"/>: <c>device-back</c> role.</summary>
internal static class DeviceBackForm
{
    public static ReadOnlySpan<byte> Kind => "device-back"u8;

    public static void Write(Utf8JsonWriter json, DeviceBack back) => json.WriteString(Kind, back.Role);

    public static DeviceBack Read(Fields fields, int n, long at) => new() { N = n, At = at, Role = fields.Text(Kind) };
}
