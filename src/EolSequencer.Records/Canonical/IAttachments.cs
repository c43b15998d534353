using System.Collections.Immutable;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Canonical;

/// <summary>Finds what events refer to by hash. What is missing or differs is a <see cref="FormatException"/>.</summary>
internal interface IAttachments
{
    /// <summary>False: raw bytes of readings are left out; whoever only judges values does without.</summary>
    bool WantBytes => true;

    /// <summary>The text of a file.</summary>
    /// <param name="hash">SHA-256 of its bytes, hex, lower case.</param>
    string SourceText(string hash);

    /// <summary>The points of the series that event <paramref name="n"/> of the run recorded.</summary>
    ImmutableArray<SeriesPoint> Series(int n, SeriesReference reference);
}
