using CsCheck;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;

namespace EolSequencer.Language.Tests.Fuzzing;

/// <summary>A reader of something that people write.</summary>
/// <param name="Name">For people.</param>
/// <param name="Share">Of a hundred inputs, how many this one gets.</param>
/// <param name="Inputs">What is written.</param>
/// <param name="Accepts">Reads it: true when it was taken, false when it was refused, which has then been reported.</param>
internal sealed record FuzzTarget(string Name, int Share, Gen<string> Inputs, Func<SourceText, Report, bool> Accepts)
{
    public override string ToString() => Name;
}
