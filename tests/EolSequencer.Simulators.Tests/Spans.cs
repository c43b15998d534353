namespace EolSequencer.Simulators.Tests;

/// <summary>Durations that read as they are written in handbooks.</summary>
internal static class Spans
{
    extension(int count)
    {
        public TimeSpan Ms => TimeSpan.FromMilliseconds(count);
    }
}
