using EolSequencer.Language.Yaml;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>A parameter of a sequence or fragment.</summary>
/// <param name="Name">Where and how the name is written.</param>
/// <param name="HasDefault">True also for a default with a fault.</param>
/// <param name="Default">The value without one given; null when one must be given.</param>
/// <param name="Window">What written values must lie in; null: everything.</param>
internal sealed record BoundParameter(YamlScalar Name, ValueShape Shape, bool HasDefault, Value? Default, ParameterWindow? Window);
