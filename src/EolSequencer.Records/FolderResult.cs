namespace EolSequencer.Records;

/// <summary>A folder that was opened, or why it was not.</summary>
public abstract record FolderResult<TFolder>
{
    private FolderResult() { }

    /// <summary>It is open.</summary>
    public sealed record Opened(TFolder Folder) : FolderResult<TFolder>;

    /// <summary>It is not.</summary>
    /// <param name="Trouble">The reason as one word.</param>
    /// <param name="Why">For people, with the path and what to try.</param>
    public sealed record Refused(FolderTrouble Trouble, string Why) : FolderResult<TFolder>;
}
