namespace EolSequencer.Records;

/// <summary>Limits of a record; tests set them lower to reach them.</summary>
internal sealed record RecordOptions
{
    public static RecordOptions Usual { get; } = new();

    /// <summary>Most pages of 4 KiB the database may have; null: as many as the disk holds.</summary>
    public int? MostPages { get; init; }

    /// <summary>How long a writer waits for another writer of the same folder.</summary>
    public TimeSpan LongestWait { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Measures that wait; real time even in a rehearsal, because the disk knows no other.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>What the write-ahead log is cut back to once no reader needs more of it.</summary>
    public long LogKeptBytes { get; init; } = 16 * 1024 * 1024;

    /// <summary>A larger write-ahead log raises an alarm: a reader has kept it from being cut back for thousands of steps.</summary>
    public long LargestLogBytes { get; init; } = 64 * 1024 * 1024;

    /// <summary>No run begins with less room than this on the disk: some 250 vehicles of the largest sequence.</summary>
    public long LeastFreeBytes { get; init; } = 32 * 1024 * 1024;

    /// <summary>Free bytes of the disk that a folder is on.</summary>
    public Func<string, long> FreeBytes { get; init; } = folder => new DriveInfo(folder).AvailableFreeSpace;
}
