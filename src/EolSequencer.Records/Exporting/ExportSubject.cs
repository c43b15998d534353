namespace EolSequencer.Records.Exporting;

/// <summary>What is exported.</summary>
public enum ExportSubject
{
    /// <summary>A line for each run.</summary>
    Runs,

    /// <summary>A line for each step result, every attempt. In a table a step with several criteria has a line for each.</summary>
    Steps,
}
