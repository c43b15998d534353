using System.Text;
using EolSequencer.Records.Chain;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Chain;

/// <summary>Somebody without this program must be able to check a chain: links and seals are what other tools make of them.</summary>
public sealed class LinkTests : IDisposable
{
    private readonly TempFolder _folder = new();

    [Fact]
    public void Links_are_those_that_sha256sum_gives()
    {
        // GNU coreutils 9.1:  { head -c32 /dev/zero; printf '{"n":1}'; } | sha256sum
        // and with that link in front:  { printf '…' | xxd -r -p; printf '{"n":2}'; } | sha256sum
        const string First = "29cecc91e68d3dffede939118bf4bbc6d970cf01aa0b9e6bde45692fabfdf661";
        const string Second = "343a24f5f805e0108039a562689b9d62b4be6072e783e4555b1eb109d4f92963";
        var chain = new ChainReader();

        Assert.True(chain.Next(Encoding.UTF8.GetBytes("""{"n":1}"""), Convert.FromHexString(First)));
        Assert.True(chain.Next(Encoding.UTF8.GetBytes("""{"n":2}"""), Convert.FromHexString(Second)));
        Assert.False(chain.Next(Encoding.UTF8.GetBytes("""{"n":2}"""), Convert.FromHexString(Second)));
    }

    [Fact]
    public void A_seal_satisfies_openssl()
    {
        _folder.WriteRuns(1);
        var (link, seal, key) = (_folder.Ask<byte[]>("SELECT hash FROM ledger WHERE n = 4")[0], _folder.Ask<byte[]>("SELECT signature FROM seal WHERE ledger = 4")[0], _folder.Ask<byte[]>("SELECT public FROM station_key")[0]);

        Assert.SkipUnless(OpenSsl.IsThere, "openssl is not installed");
        Assert.True(OpenSsl.Verifies(_folder.Path, key, link, seal));
        link[0] ^= 1;
        Assert.False(OpenSsl.Verifies(_folder.Path, key, link, seal));
    }

    [Fact]
    public void The_head_of_the_ledger_fits_on_paper()
    {
        var head = new LedgerHead(1042, string.Concat(Enumerable.Repeat("0123456789abcdef", 4)));

        Assert.Equal("1042 0123-4567-89AB-CDEF-0123-4567-89AB-CDEF", head.Fingerprint);
    }

    public void Dispose() => _folder.Dispose();
}
