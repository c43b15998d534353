using EolSequencer.Model.Vehicles;

namespace EolSequencer.Model.Ports;

/// <summary>Knows which parts are on which vehicles by now: asked when a step finds the serial of a part.</summary>
public interface IPartSerials
{
    /// <summary>Knows no part at all.</summary>
    static IPartSerials None { get; } = new NoSerials();

    /// <summary>Where else the part with this serial is. Never throws for trouble with what it is read from.</summary>
    /// <param name="vin">The vehicle on which it was found now.</param>
    /// <param name="part">The part it was found as; the same part of the same vehicle is nowhere else.</param>
    SerialAnswer Elsewhere(Vin vin, PartName part, string serial);

    private sealed class NoSerials : IPartSerials
    {
        public SerialAnswer Elsewhere(Vin vin, PartName part, string serial) => new SerialAnswer.Nowhere();
    }
}

/// <summary>Where else a part is.</summary>
public abstract record SerialAnswer
{
    private SerialAnswer() { }

    /// <summary>On no other vehicle, and not a second time on this one.</summary>
    public sealed record Nowhere : SerialAnswer;

    /// <summary>There.</summary>
    /// <param name="Vin">The vehicle; the same one when it is there a second time.</param>
    /// <param name="Run">The run that found it there.</param>
    public sealed record There(string Vin, PartName Part, string Run) : SerialAnswer;

    /// <summary>Nobody can tell.</summary>
    /// <param name="Why">For people.</param>
    public sealed record Unknown(string Why) : SerialAnswer;
}
