namespace EolSequencer.Simulators.Time;

/// <summary>What is due later, earliest first and at equal moments in the order of numbers.</summary>
/// <remarks>
/// The heap holds numbers only and what they stand for lies beside it: moving references about costs a write barrier
/// each, and nothing is moved as often as this. What is due before everything else waits in front of the heap: on a bus
/// that is the end of the frame under way, nearly always.
/// </remarks>
internal sealed class DueQueue
{
    private readonly PriorityQueue<int, Place> _order = new(64);
    private readonly Stack<int> _free = new();
    private (IDue? Target, int What)[] _entries = new (IDue?, int)[64];
    private int _used;
    private (Place Place, IDue Target, int What)? _front;

    public int Count => _order.Count + (_front is null ? 0 : 1);

    public void Add(TimeSpan due, long number, IDue target, int what)
    {
        var place = new Place(due.Ticks, number);
        if (_front is { } front)
        {
            if (place.CompareTo(front.Place) > 0)
            {
                Put(place, target, what);
                return;
            }

            Put(front.Place, front.Target, front.What);
        }
        else if (_order.TryPeek(out _, out var first) && place.CompareTo(first) > 0)
        {
            Put(place, target, what);
            return;
        }

        _front = (place, target, what);
    }

    private void Put(Place place, IDue target, int what)
    {
        if (!_free.TryPop(out var at))
        {
            if (_used == _entries.Length) Array.Resize(ref _entries, 2 * _used);
            at = _used++;
        }

        _entries[at] = (target, what);
        _order.Enqueue(at, place);
    }

    /// <summary>When the first is due; false when there is none.</summary>
    public bool TryPeek(out TimeSpan due, out long number)
    {
        var has = true;
        if (_front is not { Place: var place }) has = _order.TryPeek(out _, out place);
        (due, number) = (new TimeSpan(place.Due), place.Number);
        return has;
    }

    /// <summary>Takes the first.</summary>
    public (IDue Target, int What) Take()
    {
        if (_front is { } front)
        {
            _front = null;
            return (front.Target, front.What);
        }

        var at = _order.Dequeue();
        var (target, what) = _entries[at];
        _entries[at] = default;
        _free.Push(at);
        return (target!, what);
    }

    private readonly record struct Place(long Due, long Number) : IComparable<Place>
    {
        public int CompareTo(Place other) => Due != other.Due ? Due.CompareTo(other.Due) : Number.CompareTo(other.Number);
    }
}
