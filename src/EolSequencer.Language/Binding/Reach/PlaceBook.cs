using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>Where the parts of a bound step stand, for findings that come after binding.</summary>
internal sealed class PlaceBook
{
    private readonly Dictionary<object, SourcePlace> _places = new(ReferenceEqualityComparer.Instance);

    /// <summary>Keeps the place of an action or expectation.</summary>
    public void Note(object? part, SourcePlace place)
    {
        if (part is not null) _places[part] = place;
    }

    public SourcePlace ActionOf(Step step) => _places.GetValueOrDefault(step.Action, step.Place);

    public SourcePlace ExpectOf(Step step) => Of(step.Expect, step);

    public SourcePlace TakesOf(Step step) => Of(step.Takes, step);

    private SourcePlace Of(Expectation? expect, Step step) => expect is null ? step.Place : _places.GetValueOrDefault(expect, step.Place);
}
