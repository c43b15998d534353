namespace EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

/// <summary>What goes wrong with a disk, counted in operations from the moment it is told.</summary>
internal abstract record DiskTrouble
{
    private DiskTrouble() { }

    /// <summary>The power goes before an operation: the disk keeps what was synced, and of the rest what it likes.</summary>
    public sealed record PowerLoss(int Before) : DiskTrouble
    {
        public override string ToString() => $"power lost before disk operation {Before}";
    }

    /// <summary>The program is gone before an operation; the operating system still writes what it was given.</summary>
    public sealed record Killed(int Before) : DiskTrouble
    {
        public override string ToString() => $"program killed before disk operation {Before}";
    }

    /// <summary>So many bytes more fit on the disk.</summary>
    public sealed record Full(long Bytes) : DiskTrouble
    {
        public override string ToString() => $"disk full {Bytes} bytes on";
    }

    /// <summary>Some operations in a row fail, as on a disk that wears out.</summary>
    public sealed record Failing(int Before, int Operations) : DiskTrouble
    {
        public override string ToString() => $"disk operations {Before} to {Before + Operations - 1} fail";
    }
}
