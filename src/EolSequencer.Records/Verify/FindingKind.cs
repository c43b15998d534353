namespace EolSequencer.Records.Verify;

/// <summary>What part of a record is not as it was written.</summary>
public enum FindingKind
{
    /// <summary>The database as a file.</summary>
    Database,

    /// <summary>The ledger: an entry changed, missing, moved or added.</summary>
    Ledger,

    /// <summary>A seal is missing, does not fit or is one too many.</summary>
    Seal,

    /// <summary>A public key is not the one the ledger names.</summary>
    Key,

    /// <summary>A run as a whole: missing, added, cut off or unsealed.</summary>
    Run,

    /// <summary>An event changed, missing, moved or added.</summary>
    Event,

    /// <summary>The text of a file a sequence was made from.</summary>
    Source,

    /// <summary>The points of a series.</summary>
    Series,

    /// <summary>A table made from the events says something else than they do.</summary>
    Table,

    /// <summary>The ledger is not the one that a witness outside saw.</summary>
    Witness,
}
