namespace EolSequencer.Model.Judging;

/// <summary>What a program says about its work to the shell that called it.</summary>
public static class ExitCode
{
    public const int Pass = 0;

    public const int Fail = 1;

    /// <summary>A document or the command line is wrong; no vehicle was touched.</summary>
    public const int Document = 2;

    public const int Error = 3;

    /// <summary>Inconclusive or none.</summary>
    public const int Undecided = 4;

    /// <summary>The code of a run.</summary>
    /// <param name="rollUp">What was judged until the run ended.</param>
    /// <param name="interrupted">True when the run did not come to its end by itself; then it never ends as passed.</param>
    public static int Of(RollUp rollUp, bool interrupted) => rollUp.Verdict switch
    {
        Verdict.Error => Error,
        Verdict.Fail => Fail,
        Verdict.Pass when !interrupted => Pass,
        _ => Undecided,
    };
}
