namespace EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

/// <summary>What a disk answers, in the numbers of SQLite.</summary>
/// <remarks>Source: SQLite documentation, result and error codes.</remarks>
internal static class DiskAnswer
{
    public const int Ok = 0;
    public const int Full = 13;
    public const int WriteFailed = 10 | (3 << 8);
    public const int SyncFailed = 10 | (4 << 8);
    public const int TruncateFailed = 10 | (6 << 8);
    public const int DeleteFailed = 10 | (10 << 8);
}
