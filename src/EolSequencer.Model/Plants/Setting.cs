using System.Collections.Immutable;
using EolSequencer.Model.Source;

namespace EolSequencer.Model.Plants;

/// <summary>A setting of an adapter as it was written, with its place, so that the adapter can say what is wrong with it.</summary>
public abstract record Setting(SourcePlace Place)
{
    /// <summary>A word, number or text. What it is, the adapter decides when it asks.</summary>
    public sealed record Scalar(string Text, SourcePlace Place) : Setting(Place)
    {
        public override string ToString() => Text;
    }

    /// <summary>Settings in written order.</summary>
    public sealed record List(ImmutableArray<Setting> Items, SourcePlace Place) : Setting(Place);

    /// <summary>Named settings in written order; no name stands twice.</summary>
    public sealed record Map(ImmutableArray<Entry> Entries, SourcePlace Place) : Setting(Place)
    {
        /// <summary>Nothing set.</summary>
        public static Map Empty { get; } = new([], SourcePlace.None);

        /// <summary>The setting of a name, or null.</summary>
        public Setting? Find(string name) => Entries.FirstOrDefault(one => one.Name == name)?.Value;
    }

    /// <summary>One name with its setting.</summary>
    public sealed record Entry(string Name, SourcePlace NamePlace, Setting Value);
}
