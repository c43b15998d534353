using EolSequencer.Model.Source;

namespace EolSequencer.Model.Plants;

/// <summary>An adapter by name, with its settings as they were written: only the adapter knows what they mean.</summary>
/// <param name="Adapter">Name of the adapter, such as <c>scpi</c>.</param>
/// <param name="Place">Where that name stands, for what the adapter has to say.</param>
/// <param name="Settings">Everything else; empty when there is nothing.</param>
public sealed record AdapterBinding(string Adapter, SourcePlace Place, Setting.Map Settings);
