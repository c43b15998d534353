using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Loading;

/// <summary>What loading an order came to.</summary>
/// <param name="Order">The order; null when there is an error, and then no vehicle is tested by it.</param>
/// <param name="Diagnostics">Everything found, by file, line and column.</param>
public sealed record OrderResult(Order? Order, IReadOnlyList<Diagnostic> Diagnostics);
