using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>The record stands up: an untouched one is whole, a changed one is found.</summary>
public sealed class RecordTests : IDisposable
{
    private readonly Eol _eol = new();

    [Fact]
    public void An_untouched_record_is_whole_and_one_flipped_bit_is_found()
    {
        _eol.Startup("--only", "rest");
        Assert.Equal(0, Eol.Run("verify", "--data", _eol.Data).Code);
        ForgedRecord.Change(_eol.Data, "rest.voltage", bytes => bytes[bytes.Length / 2] ^= 1);
        var verify = Eol.Run("verify", "--data", _eol.Data);
        Assert.True(verify.Code == 1, verify.ToString());
        Assert.Contains("not whole", verify.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_witness_kept_elsewhere_fits_the_grown_record_and_no_other()
    {
        _eol.Startup("--only", "rest");
        var kept = Path.Combine(_eol.Data, "witness.txt");
        File.WriteAllText(kept, Eol.Run("witness", "--every", "2", "--data", _eol.Data).Output);
        _eol.Startup("--only", "rest");
        var fits = Eol.Run("verify", "--data", _eol.Data, "--witness", kept);
        Assert.True(fits.Code == 0 && fits.Output.Contains("the ledger is the one that the witness saw, up to entry 4", StringComparison.Ordinal), fits.ToString());

        using var other = new Eol();
        other.Startup("--only", "rest");
        var foreign = Eol.Run("verify", "--data", other.Data, "--witness", kept);
        Assert.True(foreign.Code == 1 && foreign.Output.Contains("another data folder", StringComparison.Ordinal), foreign.ToString());
        Assert.Equal(2, Eol.Run("verify", "--data", _eol.Data, "--witness", "README.md").Code);
        Assert.Equal(2, Eol.Run("verify", "--data", _eol.Data, "--witness", "no/such/file").Code);
        Assert.Equal(2, Eol.Run("witness", "--every", "0", "--data", _eol.Data).Code);
    }

    [Fact]
    public void A_rehearsal_stands_among_rehearsals_and_not_among_production_runs()
    {
        _eol.Startup("--only", "rest");
        using var rehearsals = JsonDocument.Parse(Eol.Run("show", "--rehearsals", "--json", "--data", _eol.Data).Output);
        using var production = JsonDocument.Parse(Eol.Run("show", "--json", "--data", _eol.Data).Output);
        Assert.Equal((1, 0), (rehearsals.RootElement.GetArrayLength(), production.RootElement.GetArrayLength()));
    }

    [Fact]
    public void One_run_is_shown_in_full_by_its_id()
    {
        _eol.Startup("--only", "rest");
        var show = Eol.Run("show", "startup_1-000001", "--data", _eol.Data);
        Assert.True(show.Code == 0 && show.Output.Contains("rest", StringComparison.Ordinal), show.ToString());
        Assert.Equal(2, Eol.Run("show", "startup_1-000099", "--data", _eol.Data).Code);
    }

    public void Dispose() => _eol.Dispose();
}
