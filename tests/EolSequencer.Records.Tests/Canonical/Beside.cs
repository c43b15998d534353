using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Tests.Canonical;

/// <summary>Gives back what an event took along, through its compressed form.</summary>
internal sealed class Beside(RunEvent? written) : IAttachments
{
    public string SourceText(string hash) => ((RunBegun)written!).Sources.First(source => source.Hash == hash).Text;

    public ImmutableArray<SeriesPoint> Series(int n, SeriesReference reference) =>
        SeriesContent.Read(SeriesContent.Of(((SeriesRecorded)written!).Points).Compress(), reference);
}
