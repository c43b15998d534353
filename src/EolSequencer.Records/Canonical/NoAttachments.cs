using System.Collections.Immutable;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Canonical;

/// <summary>For reading an event without what it refers to: texts of files are empty, series without points.</summary>
internal sealed class NoAttachments : IAttachments
{
    public static NoAttachments Only { get; } = new();

    public string SourceText(string hash) => "";

    public ImmutableArray<SeriesPoint> Series(int n, SeriesReference reference) => [];
}
