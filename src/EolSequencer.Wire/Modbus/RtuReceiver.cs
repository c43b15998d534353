namespace EolSequencer.Wire.Modbus;

/// <summary>
/// Puts messages together from a serial line. Where one ends is known from its function, not from a pause: pauses of 3.5
/// characters do not survive adapters and operating systems.
/// </summary>
/// <param name="isServer">True: requests are awaited; false: answers.</param>
public sealed class RtuReceiver(bool isServer)
{
    private const int CheckLength = 2;
    private readonly List<byte> _bytes = [];

    /// <summary>What has come of the next message so far.</summary>
    public byte[] Pending => [.. _bytes];

    /// <summary>Takes bytes over; ask <see cref="TryTake"/> until it has nothing.</summary>
    public void Add(ReadOnlySpan<byte> bytes) => _bytes.AddRange(bytes);

    /// <summary>Forgets what has come of the next message; at each request, because a broken one leaves its rest behind.</summary>
    public void Clear() => _bytes.Clear();

    /// <summary>The next whole message, or what is wrong with what came; false: it is not whole yet.</summary>
    /// <remarks>After a fault everything that has come is dropped: where the next message begins cannot be known.</remarks>
    public bool TryTake(out Decoded<RtuFrame> frame)
    {
        frame = default;
        if (_bytes.Count < 2) return false;
        var whole = Length();
        if (whole < 0)
        {
            frame = Decoded<RtuFrame>.Faulty($"unknown function {_bytes[1]:X2} in {Convert.ToHexString(Pending)}");
            _bytes.Clear();
            return true;
        }

        if (whole == 0 || _bytes.Count < whole) return false;
        frame = RtuFrame.Read(_bytes.GetRange(0, whole).ToArray());
        if (frame.Fault is null) _bytes.RemoveRange(0, whole);
        else _bytes.Clear();
        return true;
    }

    /// <summary>Bytes of the message that has begun; 0: not known yet; -1: it never will be.</summary>
    private int Length() => isServer ? RequestLength() : AnswerLength();

    private int AnswerLength() => _bytes[1] switch
    {
        >= ModbusException.Mark => 1 + ModbusException.Length + CheckLength,
        (byte)FunctionCode.ReadCoils or (byte)FunctionCode.ReadDiscreteInputs or (byte)FunctionCode.ReadHoldingRegisters or (byte)FunctionCode.ReadInputRegisters =>
            Counted(at: 2),
        (byte)FunctionCode.WriteSingleCoil or (byte)FunctionCode.WriteSingleRegister or (byte)FunctionCode.WriteMultipleCoils or (byte)FunctionCode.WriteMultipleRegisters =>
            1 + 5 + CheckLength,
        _ => -1,
    };

    private int RequestLength() => _bytes[1] switch
    {
        >= (byte)FunctionCode.ReadCoils and <= (byte)FunctionCode.WriteSingleRegister => 1 + 5 + CheckLength,
        (byte)FunctionCode.WriteMultipleCoils or (byte)FunctionCode.WriteMultipleRegisters => Counted(at: 6),
        _ => -1,
    };

    /// <summary>A message whose data are counted by the byte at a place; more than fit are no message.</summary>
    private int Counted(int at)
    {
        if (_bytes.Count <= at) return 0;
        var length = at + 1 + _bytes[at] + CheckLength;
        return length <= RtuFrame.Longest ? length : -1;
    }
}
