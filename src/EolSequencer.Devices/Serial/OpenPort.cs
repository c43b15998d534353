using System.Collections.Concurrent;
using System.IO.Ports;

namespace EolSequencer.Devices.Serial;

/// <summary>
/// One opening of a port, until it is gone. Reading and writing block, so each has a thread, and so has closing: on a port whose
/// other end has vanished it was seen to hang for more than a minute. Those threads hold nobody up and are left to themselves.
/// </summary>
internal sealed class OpenPort
{
    private readonly SerialPort _port;
    private readonly TimeProvider _time;
    private readonly IPortOwner _owner;
    private readonly BlockingCollection<Sending> _sendings = [];
    private int _isOver;

    private OpenPort(SerialPort port, TimeProvider time, IPortOwner owner) => (_port, _time, _owner) = (port, time, owner);

    /// <summary>Opens the port; blocks.</summary>
    /// <exception cref="Exception">One of those that <see cref="PortFault.Is"/> knows.</exception>
    public static OpenPort Open(SerialForm form, TimeProvider time, IPortOwner owner)
    {
        var port = new SerialPort(form.Port, form.Baud, form.Parity, form.DataBits, form.StopBits)
        {
            Handshake = form.FlowControl,
            WriteTimeout = (int)form.WriteLimit.TotalMilliseconds,
            ReadTimeout = SerialPort.InfiniteTimeout,
        };
        port.Open();
        return new OpenPort(port, time, owner);
    }

    /// <summary>Begins to read and write: what has come meanwhile is read, too.</summary>
    public void Begin()
    {
        Begin(ReadOn, "reads");
        Begin(WriteOn, "writes");
    }

    /// <summary>Lets bytes be written behind those that wait; the owner is told how it went.</summary>
    public void Write(Sending sending)
    {
        if (!_sendings.TryAdd(sending)) _owner.Written(this, sending, null);
    }

    /// <summary>Closes the port without waiting for it.</summary>
    public void Abandon()
    {
        if (Interlocked.Exchange(ref _isOver, 1) == 1) return;
        _sendings.CompleteAdding();
        Begin(
            () =>
            {
                try
                {
                    _port.Close();
                }
                catch (Exception fault) when (PortFault.Is(fault))
                {
                    // It was gone before.
                }
            },
            "closes");
    }

    private void Begin(ThreadStart work, string what) => new Thread(work) { IsBackground = true, Name = $"{what} {_port.PortName}" }.Start();

    private void ReadOn()
    {
        var buffer = new byte[4096];
        try
        {
            var stream = _port.BaseStream;
            while (true)
            {
                var count = stream.Read(buffer, 0, buffer.Length);
                if (count == 0) break;
                _owner.Read(this, buffer[..count], _time.GetTimestamp());
            }

            _owner.Gone(this, new IOException("nothing can be read any more"), _time.GetTimestamp());
        }
        catch (Exception fault) when (PortFault.Is(fault))
        {
            _owner.Gone(this, fault, _time.GetTimestamp());
        }
    }

    private void WriteOn()
    {
        foreach (var sending in _sendings.GetConsumingEnumerable())
        {
            try
            {
                if (!sending.IsWithdrawn) _port.BaseStream.Write(sending.Bytes.Span);
                _owner.Written(this, sending, null);
            }
            catch (Exception fault) when (PortFault.Is(fault))
            {
                _owner.Written(this, sending, fault);
                _owner.Gone(this, fault, _time.GetTimestamp());
            }
        }
    }
}

/// <summary>Who has opened a port; called on the port's threads.</summary>
internal interface IPortOwner
{
    void Read(OpenPort port, byte[] bytes, long stamp);

    /// <param name="fault">Null when the port has taken the bytes, or nobody wants them any more.</param>
    void Written(OpenPort port, Sending sending, Exception? fault);

    void Gone(OpenPort port, Exception fault, long stamp);
}
