using System.Collections.Immutable;

namespace EolSequencer.Devices.Adapters;

/// <summary>What an adapter is for and which settings a station file may give it.</summary>
/// <param name="Name">The name that station files use, such as <c>scpi</c>.</param>
/// <param name="What">One line for people, such as <c>a vehicle bus on a serial-line CAN interface</c>.</param>
/// <param name="Settings">All it knows; what else is written is refused.</param>
public sealed record AdapterDescription(string Name, string What, params ImmutableArray<AdapterSetting> Settings);

/// <summary>One setting of an adapter.</summary>
/// <param name="Name">As station files write it.</param>
/// <param name="Form">What may stand behind it.</param>
/// <param name="What">What it is for, in one line.</param>
public sealed record AdapterSetting(string Name, SettingForm Form, string What)
{
    /// <summary>True: there is no device without it.</summary>
    public bool IsRequired { get; init; }

    /// <summary>What holds when it is not written, for people; null: nothing does.</summary>
    public string? Usual { get; init; }
}
