using EolSequencer.Language.Syntax;
using EolSequencer.Model.Devices;

namespace EolSequencer.Language.Binding.Devices;

/// <summary>Reads what an action does to its surroundings, and whether it may be done again.</summary>
internal static class Effects
{
    /// <summary>The keys it reads.</summary>
    public static string[] Keys { get; } = ["moves", "energises", "heats", "repeatable"];

    public static ActionDescription Read(MapReader keys, ActionDescription action) => action with
    {
        Moves = keys.YesNo("moves") ?? false,
        Energises = keys.YesNo("energises") ?? false,
        Heats = keys.YesNo("heats") ?? false,
        IsRepeatable = keys.YesNo("repeatable") ?? false,
    };
}
