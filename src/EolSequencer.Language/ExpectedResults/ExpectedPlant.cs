using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>What tests of one plant build on; each sequence is loaded once, however many tests name it.</summary>
/// <param name="knowledge">What is known of rehearsals; null: nothing.</param>
internal sealed class ExpectedPlant(PlantFolder folder, ExpressionCache cache, IRehearsalKnowledge? knowledge)
{
    private readonly Dictionary<PlantFile, SequenceLoad.Loaded?> _sequences = [];
    private readonly Dictionary<PlantFile, KnownSteps> _steps = [];

    public PlantFolder Folder => folder;

    public ExpressionCache Cache => cache;

    public IRehearsalKnowledge? Knowledge => knowledge;

    /// <summary>Takes over what somebody else has loaded; null: it has an error, which is reported.</summary>
    public void Know(PlantFile file, SequenceLoad.Loaded? loaded) => _sequences[file] = loaded;

    /// <summary>The sequence of a file; null: already reported.</summary>
    public SequenceLoad.Loaded? Sequence(PlantFile file)
    {
        if (_sequences.TryGetValue(file, out var known)) return known;

        // What is wrong with a test says nothing about its sequence, so the sequence has a report of its own.
        var own = new Report();
        var loaded = SequenceLoad.Run(file, folder.Reporting(own), cache);
        folder.Report.Absorb(own, static _ => true);
        return _sequences[file] = own.HasErrors ? null : loaded;
    }

    /// <summary>The steps of a sequence that is loaded.</summary>
    public KnownSteps Steps(PlantFile file, SequenceLoad.Loaded loaded)
    {
        if (!_steps.TryGetValue(file, out var steps)) _steps[file] = steps = new KnownSteps(loaded.Sequence);
        return steps;
    }
}
