namespace EolSequencer.Records;

/// <summary>Why a data folder cannot be opened.</summary>
public enum FolderTrouble
{
    /// <summary>There is no record yet.</summary>
    NotThere,

    /// <summary>A file stands where the folder should be.</summary>
    NotAFolder,

    /// <summary>This account or this disk does not let it be written.</summary>
    NotWritable,

    /// <summary>The database in it belongs to something else.</summary>
    Foreign,

    /// <summary>A later version of this program made it.</summary>
    Newer,

    /// <summary>An earlier version made it and nothing has written to it since.</summary>
    Older,

    /// <summary>The database or the station key is damaged.</summary>
    Damaged,

    /// <summary>Another program keeps the database for itself.</summary>
    Busy,
}
