using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Identity;

namespace EolSequencer.Records.People;

/// <summary>Salted hashes of PINs and passwords (PBKDF2, as ASP.NET Core Identity makes them).</summary>
internal static class SecretHasher
{
    private static readonly PasswordHasher<string> Hasher = new();

    /// <summary>A hash that fits no secret: checking it takes as long as checking one that is kept.</summary>
    private static readonly Lazy<string> Nobody = new(() => Hash("", Convert.ToHexString(RandomNumberGenerator.GetBytes(32))));

    public static string Hash(string badge, string secret) => Hasher.HashPassword(badge, secret);

    /// <summary>Whether the secret is the one the hash was made of; never when there is no hash, and that takes as long.</summary>
    public static bool Fits(string badge, string? hash, string secret) =>
        Hasher.VerifyHashedPassword(badge, hash ?? Nobody.Value, secret) != PasswordVerificationResult.Failed && hash is not null;

    /// <summary>SHA-256 over the salted hash, for the ledger: the salt is in it, so it tells nothing of the secret.</summary>
    public static string FingerprintOf(string hash) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(hash)));
}
