namespace EolSequencer.Devices.Serial;

/// <summary>What a port throws when it is not there or goes away.</summary>
internal static class PortFault
{
    /// <summary>
    /// Whether an exception means that the port is gone. Measured on Linux with a pseudo-terminal whose other end vanished: a
    /// pending read ends with the first of them, later reads and writes with any of the others, while the port still
    /// says that it is open.
    /// </summary>
    public static bool Is(Exception fault) =>
        fault is ObjectDisposedException or OperationCanceledException or TimeoutException or IOException or UnauthorizedAccessException or InvalidOperationException or ArgumentException;

    /// <summary>In words, with what to try.</summary>
    public static string Words(Exception fault, string port) => fault switch
    {
        TimeoutException => $"{port} takes no more bytes",
        ArgumentException => $"{port} cannot do this: {fault.Message}",
        // A name that is not there is reported as a right that is missing.
        _ when !OperatingSystem.IsWindows() && !File.Exists(port) => $"{port} is not there; is it plugged in?",
        UnauthorizedAccessException => $"{port} cannot be opened: {fault.Message}; may this user use it, and does nobody else?",
        _ => $"{port} is gone: {fault.Message}",
    };
}
