using EolSequencer.Model.Values;

namespace EolSequencer.Model.Ports;

/// <summary>The newest reading of what the current step watches: lossy, never kept, never judged from.</summary>
public interface ILiveValues
{
    /// <summary>A reading worth showing.</summary>
    void Show(string step, string channel, Value? value);

    /// <summary>Shows nothing.</summary>
    static ILiveValues Nowhere { get; } = new Silent();

    private sealed class Silent : ILiveValues
    {
        public void Show(string step, string channel, Value? value) { }
    }
}
