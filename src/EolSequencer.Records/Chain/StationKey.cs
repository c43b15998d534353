using System.Security.Cryptography;

namespace EolSequencer.Records.Chain;

/// <summary>The key that seals what this computer recorded (ECDSA over P-256, FIPS 186-5). Not for several threads at once.</summary>
internal sealed class StationKey : IDisposable
{
    private const string P256 = "1.2.840.10045.3.1.7";

    private readonly ECDsa _key;

    private StationKey(ECDsa key)
    {
        _key = key;
        Public = key.ExportSubjectPublicKeyInfo();
    }

    /// <summary>The public key as SubjectPublicKeyInfo (RFC 5280), DER.</summary>
    public byte[] Public { get; }

    /// <summary>SHA-256 of <see cref="Public"/>, hex, lower case.</summary>
    public string Fingerprint => FingerprintOf(Public);

    public static string FingerprintOf(ReadOnlySpan<byte> publicKey) => Convert.ToHexStringLower(SHA256.HashData(publicKey));

    public static StationKey Make() => new(ECDsa.Create(ECCurve.NamedCurves.nistP256));

    /// <summary>The private key as PKCS#8 (RFC 5958) in PEM (RFC 7468).</summary>
    public string ToPem() => _key.ExportPkcs8PrivateKeyPem() + "\n";

    /// <summary>Reads what <see cref="ToPem"/> wrote; a <see cref="FormatException"/> says why the text is no such key.</summary>
    public static StationKey FromPem(string pem)
    {
        var key = ECDsa.Create();
        try
        {
            key.ImportFromPem(pem);
            if (key.ExportParameters(includePrivateParameters: true).Curve.Oid.Value != P256) throw new CryptographicException("the key is not one of P-256");
            return new StationKey(key);
        }
        catch (Exception fault) when (fault is ArgumentException or CryptographicException or NotSupportedException)
        {
            key.Dispose();
            throw new FormatException(fault.Message, fault);
        }
    }

    /// <summary>Signs the link of a ledger entry: 64 bytes, r and s (IEEE P1363).</summary>
    public byte[] Seal(ReadOnlySpan<byte> link) => _key.SignHash(link.ToArray());

    /// <summary>Whether a seal was made over this link with the private half of this public key.</summary>
    public static bool IsSeal(ReadOnlySpan<byte> publicKey, ReadOnlySpan<byte> link, ReadOnlySpan<byte> seal)
    {
        using var key = ECDsa.Create();
        try
        {
            key.ImportSubjectPublicKeyInfo(publicKey, out _);
            return key.VerifyHash(link, seal);
        }
        catch (Exception fault) when (fault is ArgumentException or CryptographicException or NotSupportedException)
        {
            // What was a public key is none any more.
            return false;
        }
    }

    public void Dispose() => _key.Dispose();
}
