namespace EolSequencer.Cli.Probing.Verbs;

/// <summary>A command of the prompt.</summary>
internal interface IVerb
{
    /// <summary>The word it begins with.</summary>
    string Word { get; }

    /// <summary>How it is written, one form a line, with what it does behind it.</summary>
    IReadOnlyList<(string Form, string Meaning)> Forms { get; }

    /// <summary>Does it.</summary>
    /// <param name="rest">What was typed behind the word.</param>
    /// <exception cref="ProbeTrouble">It cannot be done.</exception>
    /// <exception cref="OperationCanceledException">Somebody asked for its end.</exception>
    Task RunAsync(string rest, ProbeTurn turn);
}
