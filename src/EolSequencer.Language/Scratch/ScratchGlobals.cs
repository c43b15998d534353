using EolSequencer.Language.Expressions.Support;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Scratch;

/// <summary>What the code in front of all lines takes readings from; public because that code is compiled elsewhere.</summary>
public sealed class ScratchGlobals(IScratchReader reader)
{
    /// <summary>Itself, for the objects of the devices.</summary>
    public ScratchGlobals Readings => this;

    /// <summary>A quantity as it comes.</summary>
    public T QuantityOf<T>(string role, string channel, string? index) where T : struct, IQuantity<T> =>
        ScopeValues.Quantity<T>(reader.Read(role, channel, index));

    /// <summary>A number without a unit.</summary>
    public decimal CountOf(string role, string channel, string? index) => ScopeValues.Count(reader.Read(role, channel, index));

    public bool TruthOf(string role, string channel, string? index) => ScopeValues.Truth(reader.Read(role, channel, index));

    public string TextOf(string role, string channel, string? index) => reader.Read(role, channel, index).ToString()!;

    public string[] ListOf(string role, string channel, string? index) =>
        reader.Read(role, channel, index) is ListValue list ? [.. list.Items] : [];
}
