using EolSequencer.Language.Syntax;
using EolSequencer.Model.Devices;

namespace EolSequencer.Language.Binding.Devices;

/// <summary>Reads what an action does to its surroundings, and whether it may be done again.</summary>
internal static class Effects
{
    /// <summary>The keys it reads.</summary>
    public static MapKey[] Keys { get; } =
    [
        new("moves", Forms.YesNo, "something moves: a step that uses it needs a caution"),
        new("energises", Forms.YesNo, "something gets voltage: a step that uses it needs a caution"),
        new("heats", Forms.YesNo, "something gets hot: a step that uses it needs a caution"),
        new("repeatable", Forms.YesNo, "after a crash it may be done again without asking a person"),
    ];

    public static ActionDescription Read(MapReader keys, ActionDescription action) => action with
    {
        Moves = keys.YesNo("moves") ?? false,
        Energises = keys.YesNo("energises") ?? false,
        Heats = keys.YesNo("heats") ?? false,
        IsRepeatable = keys.YesNo("repeatable") ?? false,
    };
}
