namespace EolSequencer.Model.Expressions;

/// <summary>How an author picks one value of an indexed channel, fact or result.</summary>
public abstract record IndexUse
{
    private IndexUse() { }

    /// <summary>A value written down: <c>["fl"]</c> or <c>[fl]</c> in a channel.</summary>
    public sealed record Fixed(string Value) : IndexUse;

    /// <summary>The value of a loop name or parameter: <c>[wheel]</c>.</summary>
    public sealed record Named(string Name) : IndexUse;

    /// <summary>The index for one instance of a loop.</summary>
    /// <param name="arguments">Loop names and parameters in force.</param>
    public string Resolve(Arguments arguments) => this switch
    {
        Fixed one => one.Value,
        Named name => arguments.Text(name.Name),
        _ => throw new InvalidOperationException("an index is fixed or named"),
    };
}
