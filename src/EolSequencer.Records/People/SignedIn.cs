namespace EolSequencer.Records.People;

/// <summary>Somebody who has shown badge and secret. Only signing in makes one; whether they still may act is asked again at every act.</summary>
public sealed class SignedIn
{
    internal SignedIn(string badge, string name) => (Badge, Name) = (badge, name);

    public string Badge { get; }

    public string Name { get; }
}
