using EolSequencer.Model.Values;

namespace EolSequencer.Language.Scratch;

/// <summary>Gives a line of C# the readings it asks for, at the moment it asks.</summary>
public interface IScratchReader
{
    /// <summary>One reading; called on the line's own thread and waits there.</summary>
    /// <param name="index">Null when the channel has none.</param>
    /// <exception cref="ScratchTrouble">There is no value; the message says why.</exception>
    Value Read(string role, string channel, string? index);
}

/// <summary>A reading that a line asked for and that did not come, in words.</summary>
public sealed class ScratchTrouble(string message) : Exception(message);
