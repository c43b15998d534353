namespace EolSequencer.Model.Values;

/// <summary>What a value is; <c>as:</c> in a file.</summary>
public enum ValueKind
{
    /// <summary>A decimal number, with a unit or (a count) without.</summary>
    Number,

    Text,

    /// <summary>Yes or no.</summary>
    Truth,

    /// <summary>Texts in the order they came, such as trouble codes.</summary>
    List,

    /// <summary>A duration: a number whose unit is one of time.</summary>
    Time,
}
