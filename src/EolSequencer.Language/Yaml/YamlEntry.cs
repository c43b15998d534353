namespace EolSequencer.Language.Yaml;

/// <summary>One key of a map with its value.</summary>
internal sealed record YamlEntry(YamlScalar Key, YamlNode Value);
