using System.Security.Cryptography;
using System.Text;
using EolSequencer.Records.Chain;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Tests.Chain;

/// <summary>Hashes and seals are those of the published standards, so that any other program comes to the same.</summary>
public sealed class PublishedVectorTests
{
    // The examples that go with FIPS 180-4 (one block, two blocks) and the empty message; written from memory and compared with
    // several public test suites that name the standard.
    private const string OfNothing = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
    private const string OfAbc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    private const string Of448Bits = "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1";
    private const string The448Bits = "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq";

    // RFC 6979, A.2.5: curve P-256, hash SHA-256, messages "sample" and "test"; written from memory and compared with several
    // public test suites that name the section.
    private const string Private = "C9AFA9D845BA75166B5C215767B1D6934E50C3DB36E89B127B8A622B120F6721";
    private const string PublicX = "60FED4BA255A9D31C961EB74C6356D68C049B8923B61FA6CE669622E60F29FB6";
    private const string PublicY = "7903FE1008B8BC99A41AE9E95628BC64F2F1B20C2D7E9F5177A3C294D4462299";
    private const string SealOfSample = "EFD48B2AACB6A8FD1140DD9CD45E81D69D2C877B56AAF991C34D0EA84EAF3716F7CB1C942D657C41D436C7A1B6E29F65F3E900DBB9AFF4064DC4AB2F843ACDA8";
    private const string SealOfTest = "F1ABB023518351CD71D881567B1EA663ED3EFCF6C5132B354F28D3B0B7D38367019F4113742A2B14BD25926B49C649155F267E60D3814B4C0CC84250E46F0083";

    /// <summary>RFC 5480: id-ecPublicKey, secp256r1, a bit string of an uncompressed point, whose coordinates follow.</summary>
    private const string KeyHeader = "3059301306072A8648CE3D020106082A8648CE3D03010703420004";

    [Theory]
    [InlineData("", OfNothing)]
    [InlineData("abc", OfAbc)]
    [InlineData(The448Bits, Of448Bits)]
    public void The_hash_of_files_and_keys_is_SHA_256(string message, string hash)
    {
        Assert.Equal(hash, SourceBytes.HashOf(Encoding.ASCII.GetBytes(message)));
        Assert.Equal(hash, StationKey.FingerprintOf(Encoding.ASCII.GetBytes(message)));
    }

    [Fact]
    public void A_link_is_SHA_256_over_the_link_before_and_the_bytes()
    {
        var message = Encoding.ASCII.GetBytes(The448Bits);
        var chain = new ChainReader();
        chain.Begin(message.AsSpan(0, LinkBuffer.HashSize));

        Assert.True(chain.Next(message.AsSpan(LinkBuffer.HashSize), Convert.FromHexString(Of448Bits)));
    }

    [Theory]
    [InlineData("sample", SealOfSample, true)]
    [InlineData("test", SealOfTest, true)]
    [InlineData("sample", SealOfTest, false)]
    public void A_published_signature_is_a_seal_over_its_message_alone(string message, string seal, bool fits) =>
        Assert.Equal(fits, StationKey.IsSeal(PublicKey, SHA256.HashData(Encoding.ASCII.GetBytes(message)), Convert.FromHexString(seal)));

    [Fact]
    public void The_published_private_key_has_the_published_public_one_and_its_seals_fit()
    {
        using var curve = ECDsa.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, D = Convert.FromHexString(Private) });
        using var key = StationKey.FromPem(curve.ExportPkcs8PrivateKeyPem());
        var link = SHA256.HashData("sample"u8);

        Assert.Equal(PublicKey, key.Public);
        Assert.True(StationKey.IsSeal(PublicKey, link, key.Seal(link)));
    }

    private static byte[] PublicKey => Convert.FromHexString(KeyHeader + PublicX + PublicY);
}
