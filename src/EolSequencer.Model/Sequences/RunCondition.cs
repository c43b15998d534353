using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Model.Sequences;

/// <summary>What is recorded with every run of a sequence beside its steps.</summary>
/// <param name="Name">What it is called in the record.</param>
/// <param name="Channel">Where it is read; without an index, every value of an indexed channel is.</param>
public sealed record RunCondition(string Name, ChannelUse Channel, ChannelDescription Description);
