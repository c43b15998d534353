namespace EolSequencer.Model.Ports;
public sealed record OperatorScript;
