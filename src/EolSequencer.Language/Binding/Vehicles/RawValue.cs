using EolSequencer.Model.Devices;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>How a value lies in bytes, and what it then is.</summary>
internal sealed record RawValue(RawForm Form, ValueShape Shape);
