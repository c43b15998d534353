using EolSequencer.Records.Administration;

namespace EolSequencer.Records.People;

/// <summary>What a PIN or password must be.</summary>
internal static class SecretRules
{
    public const int ShortestPin = 6;

    public const int ShortestPassword = 10;

    public const int Longest = 128;

    /// <summary>Null when it may be used. The message never holds the secret.</summary>
    public static Refused? Check(string badge, string secret)
    {
        if (secret.Length > Longest) return Refused.Malformed($"the PIN or password has {secret.Length} characters; {Longest} are the most");
        if (secret.Any(char.IsControl)) return Refused.Malformed("the PIN or password holds a control character; take it out");
        var isPin = secret.All(char.IsAsciiDigit);
        if (secret.Length < (isPin ? ShortestPin : ShortestPassword))
        {
            return Refused.Malformed($"the {(isPin ? "PIN" : "password")} has {secret.Length} characters; a PIN has {ShortestPin} digits or more, a password {ShortestPassword} characters or more");
        }

        if (secret.Distinct().Count() < 3 || IsRow(secret)) return Refused.Malformed("the PIN or password is one that others try first (one digit over and over, digits in a row); choose another");
        return string.Equals(secret, badge, StringComparison.OrdinalIgnoreCase) ? Refused.Malformed("the PIN or password is the badge; choose another") : null;
    }

    /// <summary>Each character is the one after, or before, its neighbour.</summary>
    private static bool IsRow(string secret) =>
        Enumerable.Range(1, secret.Length - 1).All(at => secret[at] - secret[at - 1] == 1) || Enumerable.Range(1, secret.Length - 1).All(at => secret[at] - secret[at - 1] == -1);
}
