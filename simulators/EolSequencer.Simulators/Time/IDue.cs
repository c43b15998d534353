namespace EolSequencer.Simulators.Time;

/// <summary>Something that happens when its moment has come.</summary>
public interface IDue
{
    /// <summary>Called once for every time it was scheduled.</summary>
    /// <param name="what">The number that was handed over with it: which of its own moments this is.</param>
    void Due(int what);
}
