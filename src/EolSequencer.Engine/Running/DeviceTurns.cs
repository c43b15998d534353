using System.Runtime.CompilerServices;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Engine.Running;

/// <summary>
/// The turns of all exclusive devices that a step uses, taken in the order of their roles so that two steps never wait
/// for each other.
/// </summary>
internal sealed class DeviceTurns : IDisposable
{
    private static readonly ConditionalWeakTable<Step, string[]> KnownRoles = [];

    private readonly List<Turnstile.Turn> _turns = [];

    /// <summary>Whether a step uses an exclusive device at all.</summary>
    public static bool AreNeeded(RunServices run, Step step)
    {
        foreach (var role in InOrder(step))
        {
            if (run.Device(role).Kind.IsExclusive) return true;
        }

        return false;
    }

    public static async ValueTask<DeviceTurns?> EnterAsync(RunServices run, Step step, CancellationToken cancel)
    {
        if (!AreNeeded(run, step)) return null;
        var taken = new DeviceTurns();
        try
        {
            foreach (var role in InOrder(step))
            {
                if (run.Device(role).Kind.IsExclusive) taken._turns.Add(await run.Device(role).Turns.EnterAsync(cancel));
            }

            return taken;
        }
        catch
        {
            taken.Dispose();
            throw;
        }
    }

    public void Dispose()
    {
        foreach (var turn in _turns) turn.Dispose();
        _turns.Clear();
    }

    private static string[] InOrder(Step step) => KnownRoles.GetValue(step, StepDevices.Of);
}
