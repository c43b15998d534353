using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Exporting;

/// <summary>Writes exported lines in one form.</summary>
internal interface IExportLines : IDisposable
{
    /// <summary>Lines written so far.</summary>
    long Count { get; }

    /// <summary>Writes what stands before the first line.</summary>
    void Begin(ExportSubject subject);

    void Add(RunSummary run);

    void Add(StepResult step);
}
