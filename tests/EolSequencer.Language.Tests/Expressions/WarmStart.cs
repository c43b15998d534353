using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>What a test runs in a context of its own to see which assemblies it takes.</summary>
public static class WarmStart
{
    /// <summary>Loads from a cache and evaluates one expression.</summary>
    public static string Run(string folder)
    {
        var load = Load.Of(ExpressionCache.In(folder));
        return new FixedScope().With("bus.brake_switch", true).Evaluate(load.Expressions[0]).ToString()!;
    }
}
