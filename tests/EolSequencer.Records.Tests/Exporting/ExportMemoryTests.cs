using EolSequencer.Model.Events;
using EolSequencer.Records.Exporting;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Exporting;

/// <summary>A record of years must be exported on the small computer of a station. Runs alone: memory is that of the whole process.</summary>
[Collection(Alone)]
[CollectionDefinition(Alone, DisableParallelization = true)]
public sealed class ExportMemoryTests : IDisposable
{
    private const string Alone = "memory of an export";

    private readonly TempFolder _folder = new();

    [Fact]
    public void It_does_not_grow_with_the_number_of_runs()
    {
        const int Fewer = 300, More = 1500;
        RehearsedRuns.Write(_folder, Fewer);
        var few = Kept();
        RehearsedRuns.Write(_folder, More - Fewer);
        var many = Kept();

        Assert.True(many < few + 256 * 1024, $"{few} bytes are held for {Fewer} runs, {many} for {More}");

        long Kept()
        {
            using var probe = new HeldMemory();
            _folder.OpenToRead().Exports.Write(probe, ExportSubject.Steps, ExportForm.Csv, new ExportFilter { Mode = RunMode.Rehearsal });
            return probe.Most;
        }
    }

    public void Dispose() => _folder.Dispose();

    /// <summary>Swallows what is written, and looks now and then how much memory is held by then.</summary>
    private sealed class HeldMemory : MemoryStream
    {
        private readonly long _before = GC.GetTotalMemory(forceFullCollection: true);
        private int _writes;

        public long Most { get; private set; }

        public override void Write(ReadOnlySpan<byte> buffer) => Look();

        public override void Write(byte[] buffer, int offset, int count) => Look();

        private void Look()
        {
            if (_writes++ % 40 == 0) Most = Math.Max(Most, GC.GetTotalMemory(forceFullCollection: true) - _before);
        }
    }
}
