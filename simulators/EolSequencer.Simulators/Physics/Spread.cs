using EolSequencer.Simulators.Randomness;

namespace EolSequencer.Simulators.Physics;

/// <summary>How one vehicle differs from the next of its kind.</summary>
internal sealed class Spread(ulong seed)
{
    /// <summary>The stream of one part of the vehicle.</summary>
    public RandomStream Of(string part) => new(seed, part);
}

/// <summary>Draws of manufacturing spread.</summary>
internal static class SpreadDraws
{
    extension(RandomStream stream)
    {
        /// <summary>A value about a nominal one, never more than two and a half deviations away.</summary>
        public double About(double nominal, double deviation) => nominal + (Math.Clamp(stream.Normal(), -2.5, 2.5) * deviation);

        /// <summary>A duration about a nominal one, in seconds.</summary>
        public TimeSpan AboutSeconds(double nominal, double deviation) => TimeSpan.FromSeconds(stream.About(nominal, deviation));
    }
}
