namespace EolSequencer.Records.Writing;

/// <summary>
/// Hands items from many threads to one, in the order of their numbers, whatever order they come in. Both sides wait: the
/// taker for the next number, the givers when too much is on its way.
/// </summary>
/// <param name="mostReady">Items that may wait for the taker.</param>
/// <param name="mostAhead">Numbers that may be out while the oldest is still missing; more of them are never worked on by one thread.</param>
internal sealed class HandOver<T>(int mostReady, int mostAhead)
    where T : class
{
    private readonly Dictionary<long, T?> _waiting = [];
    private long _announced;
    private long _taken;
    private bool _closed;

    /// <summary>Gives out the next number, from 1; waits while the oldest missing one is too far behind.</summary>
    public long Announce()
    {
        lock (_waiting)
        {
            while (_announced - _taken >= mostAhead && !_closed) Monitor.Wait(_waiting);
            return ++_announced;
        }
    }

    /// <summary>Hands an item over; waits while the taker has enough. Null: nothing will come under this number.</summary>
    public void Put(long number, T? item)
    {
        lock (_waiting)
        {
            while (_waiting.Count >= mostReady && _waiting.ContainsKey(_taken + 1)) Monitor.Wait(_waiting);
            _waiting.Add(number, item);
            Monitor.PulseAll(_waiting);
        }
    }

    /// <summary>Waits for the item with the next number; null when the hand-over is closed and nothing is left.</summary>
    public T? Take()
    {
        lock (_waiting)
        {
            while (true)
            {
                if (_waiting.Remove(_taken + 1, out var item))
                {
                    _taken++;
                    Monitor.PulseAll(_waiting);
                    if (item is not null) return item;
                }
                else if (_closed)
                {
                    if (_waiting.Count == 0) return null;
                    _taken = _waiting.Keys.Min() - 1;
                }
                else
                {
                    Monitor.Wait(_waiting);
                }
            }
        }
    }

    /// <summary>Nothing more will come: numbers that never came are passed over.</summary>
    public void Close()
    {
        lock (_waiting)
        {
            _closed = true;
            Monitor.PulseAll(_waiting);
        }
    }
}
