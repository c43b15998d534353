using EolSequencer.Model.Units;

namespace EolSequencer.Model.Tests.Support;

/// <summary>Shortens tests that look units up.</summary>
internal static class Lookups
{
    public static Unit Known(string spelling) => Assert.IsType<UnitLookup.Found>(UnitTable.Find(spelling)).Unit;

    public static UnitLookup.Unknown Unknown(string spelling) => Assert.IsType<UnitLookup.Unknown>(UnitTable.Find(spelling));

    public static decimal Convert(decimal value, string from, string to)
    {
        Assert.True(Known(from).TryConvert(value, Known(to), out var result));
        return result;
    }
}
