using System.ComponentModel;
using System.Diagnostics;
using System.Formats.Asn1;
using System.Numerics;

namespace EolSequencer.Records.Tests.Chain;

/// <summary>The openssl command as a second opinion on signatures.</summary>
internal static class OpenSsl
{
    public static bool IsThere
    {
        get
        {
            try
            {
                return Run("version") == 0;
            }
            catch (Win32Exception)
            {
                return false;
            }
        }
    }

    /// <summary>Whether openssl takes r and s (64 bytes) for a signature over this digest with this key.</summary>
    public static bool Verifies(string folder, byte[] publicKey, byte[] digest, byte[] signature)
    {
        var (key, hash, seal) = (Path.Combine(folder, "key.der"), Path.Combine(folder, "link.bin"), Path.Combine(folder, "seal.der"));
        File.WriteAllBytes(key, publicKey);
        File.WriteAllBytes(hash, digest);
        File.WriteAllBytes(seal, ToDer(signature));
        return Run("pkeyutl", "-verify", "-pubin", "-keyform", "DER", "-inkey", key, "-in", hash, "-sigfile", seal) == 0;
    }

    private static byte[] ToDer(byte[] signature)
    {
        var der = new AsnWriter(AsnEncodingRules.DER);
        using (der.PushSequence())
        {
            der.WriteInteger(new BigInteger(signature.AsSpan(0, 32), isUnsigned: true, isBigEndian: true));
            der.WriteInteger(new BigInteger(signature.AsSpan(32), isUnsigned: true, isBigEndian: true));
        }

        return der.Encode();
    }

    private static int Run(params string[] arguments)
    {
        var start = new ProcessStartInfo("openssl", arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode;
    }
}
