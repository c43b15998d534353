using EolSequencer.Wire.TroubleCodes;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>The trouble codes of one unit.</summary>
internal sealed class TroubleMemory
{
    /// <summary>The status bits that these units keep.</summary>
    public const TroubleCodeStatus Availability =
        TroubleCodeStatus.TestFailed | TroubleCodeStatus.TestFailedThisOperationCycle | TroubleCodeStatus.Pending |
        TroubleCodeStatus.Confirmed | TroubleCodeStatus.TestFailedSinceLastClear | TroubleCodeStatus.WarningIndicatorRequested;

    private const TroubleCodeStatus Failing =
        TroubleCodeStatus.TestFailed | TroubleCodeStatus.TestFailedThisOperationCycle | TroubleCodeStatus.Pending |
        TroubleCodeStatus.Confirmed | TroubleCodeStatus.TestFailedSinceLastClear;

    private const TroubleCodeStatus Past = TroubleCodeStatus.Confirmed | TroubleCodeStatus.TestFailedSinceLastClear;

    private readonly List<StoredCode> _codes = [];
    private readonly HashSet<TroubleCode> _present = [];

    /// <summary>Whether faults are stored (service 85).</summary>
    public bool IsStoring { get; set; } = true;

    /// <summary>All codes in the order in which they came.</summary>
    public IReadOnlyList<StoredCode> Codes => _codes;

    /// <summary>Number of confirmed codes.</summary>
    public int ConfirmedCount => With(TroubleCodeStatus.Confirmed).Count;

    /// <summary>A fault of the past; clearing removes it for good.</summary>
    public void Remember(TroubleCode code) => _codes.Add(new StoredCode(code, Past));

    /// <summary>A fault that is there now; it comes back after clearing, since the unit finds it again at once.</summary>
    public void Find(TroubleCode code)
    {
        _present.Add(code);
        if (IsStoring) _codes.Add(new StoredCode(code, Failing));
    }

    public void Clear()
    {
        _codes.Clear();
        foreach (var code in _present) _codes.Add(new StoredCode(code, Failing));
    }

    /// <summary>The codes that have one of the bits of a mask.</summary>
    public IReadOnlyList<StoredCode> With(TroubleCodeStatus mask)
    {
        if (_codes.Count == 0) return [];
        return _codes.FindAll(entry => (entry.Status & mask & Availability) != 0);
    }
}
