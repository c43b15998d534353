using System.Globalization;
using System.Runtime.InteropServices;

namespace EolSequencer.Benchmarks;

/// <summary>Prints figures in one form.</summary>
internal static class Figures
{
    public static void Print(string name, double value, string unit, string format = "0.000") =>
        Console.WriteLine($"{name}: {value.ToString(format, CultureInfo.InvariantCulture)} {unit}".TrimEnd());

    public static void Print(string name, long value, string unit = "") =>
        Console.WriteLine($"{name}: {value.ToString(CultureInfo.InvariantCulture)} {unit}".TrimEnd());

    public static void PrintMachine() => Console.WriteLine(
        $"machine: {Environment.ProcessorCount} cores, {RuntimeInformation.OSDescription}, .NET {Environment.Version}, {RuntimeInformation.ProcessArchitecture}");
}
