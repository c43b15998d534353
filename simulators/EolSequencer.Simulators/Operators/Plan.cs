using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.Operators;

/// <summary>What a person does, looks at or says at one prompt.</summary>
internal abstract record Plan
{
    private Plan() { }

    /// <summary>Does something on the vehicle.</summary>
    /// <param name="Act">The first movement; it arranges the further ones.</param>
    public sealed record Do(Action<Errand> Act) : Plan;

    /// <summary>Looks, listens or feels, and says whether it is in order.</summary>
    /// <param name="Find">Where something is wrong; null: nowhere.</param>
    public sealed record Look(Func<Van, string?> Find) : Plan
    {
        /// <summary>What is done before there is something to see; null: nothing.</summary>
        public Action<Errand>? First { get; init; }

        /// <summary>Whether what hands and feet hold is let go afterwards.</summary>
        public bool ThenLetsGo { get; init; }
    }

    /// <summary>Scans, reads off or picks a text.</summary>
    public sealed record Say(Func<Errand, string> Text) : Plan;
}
