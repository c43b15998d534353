using EolSequencer.Language.Expressions;

namespace EolSequencer.Cli.Commands;

/// <summary>Where compiled expressions are kept from one start to the next: with what belongs to this account, not with the record.</summary>
internal static class ExpressionsFolder
{
    public static ExpressionCache Open()
    {
        var home = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        return ExpressionCache.In(Path.Combine(home.Length > 0 ? home : Path.GetTempPath(), "eol", "expressions"));
    }
}
