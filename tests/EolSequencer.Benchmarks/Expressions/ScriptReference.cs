using System.Diagnostics;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

namespace EolSequencer.Benchmarks.Expressions;

/// <summary>The reference: each expression a script of its own, created and bound to a delegate.</summary>
public static class ScriptReference
{
    /// <summary>What the scripts see.</summary>
    public sealed class Globals
    {
        public decimal a { get; init; } = 1.5m;
        public decimal b { get; init; } = 2.5m;
    }

    /// <summary>Seconds for so many scripts, cold and then others warm.</summary>
    public static double[] Measure(int count) => [Seconds(count, 0), Seconds(count, count)];

    private static double Seconds(int count, int from)
    {
        var options = ScriptOptions.Default.WithImports("System");
        var begun = Stopwatch.GetTimestamp();
        for (var n = from; n < from + count; n++)
        {
            var text = (n % 5) switch
            {
                0 => $"a * 2 + {n}",
                1 => $"a - b + {n}",
                2 => $"(a + {n}) / 4.5m",
                3 => $"Math.Max(a, {n})",
                _ => $"a > {n} ? 1.5m : 2.5m",
            };
            CSharpScript.Create<decimal>(text, options, typeof(Globals)).CreateDelegate()(new Globals()).GetAwaiter().GetResult();
        }

        return Stopwatch.GetElapsedTime(begun).TotalSeconds;
    }
}
