using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>A step or group with one set of loop values.</summary>
/// <param name="Id">Full id, such as <c>wheel_nuts[fl].torque</c>.</param>
/// <param name="Arguments">Loop names and parameters in force inside.</param>
/// <param name="Before">The vehicles that come to it, before its <c>when</c>.</param>
/// <param name="Applies">Those of them for which its <c>when</c> holds.</param>
/// <param name="Reached">The vehicles it applies to; of a loop, those that have this value.</param>
internal sealed record NodeInstance(Node Node, string Id, Arguments Arguments, Reached Before, Reached Applies, Reached Reached);
