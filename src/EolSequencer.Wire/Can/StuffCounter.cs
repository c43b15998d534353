namespace EolSequencer.Wire.Can;

/// <summary>Counts the stuff bits that a controller puts into a bit string, eight bits at a step.</summary>
/// <remarks>
/// After five equal bits one of the opposite value is sent, and that bit starts the next run (ISO 11898-1, bit
/// stuffing). A state is the value of the last bit and the length of its run, 1 to 4, so there are eight; the table
/// holds for every state and every byte the state behind it and the stuff bits in it.
/// The default value stands behind one dominant bit; a field begins with alternating fill bits that end recessive, so
/// that the start-of-frame bit opens a run of its own.
/// </remarks>
internal struct StuffCounter
{
    private const int LongestRun = 5;
    private static readonly byte[] Table = BuildTable();

    private int _state;

    /// <summary>The stuff bits so far.</summary>
    public int Count { get; private set; }

    /// <summary>Goes over eight bits, highest first.</summary>
    public void Add(byte bits)
    {
        int entry = Table[(_state << 8) | bits];
        _state = entry & 7;
        Count += entry >> 3;
    }

    /// <summary>Goes over up to 32 bits, highest first.</summary>
    public void Add(uint bits, int count)
    {
        for (var i = count - 1; i >= 0; i--)
        {
            (_state, var stuffed) = Step(_state, (int)(bits >> i) & 1);
            Count += stuffed;
        }
    }

    /// <summary>Whether a stuff bit stands right behind the last bit, given its value.</summary>
    public readonly bool EndsWithStuffBit(int lastBit) => _state >> 2 != lastBit;

    private static (int State, int Stuffed) Step(int state, int bit)
    {
        var run = state >> 2 == bit ? (state & 3) + 2 : 1;
        return run == LongestRun ? (State(1 - bit, 1), 1) : (State(bit, run), 0);
    }

    private static int State(int bit, int run) => (bit << 2) | (run - 1);

    private static byte[] BuildTable()
    {
        var table = new byte[8 * 256];
        for (var index = 0; index < table.Length; index++)
        {
            var counter = new StuffCounter { _state = index >> 8 };
            counter.Add((uint)index & 0xFF, 8);
            table[index] = (byte)((counter.Count << 3) | counter._state);
        }

        return table;
    }
}
