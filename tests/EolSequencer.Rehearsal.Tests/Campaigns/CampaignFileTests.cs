using EolSequencer.Rehearsal.Campaigns;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Rehearsal.Tests.Campaigns;

/// <summary>Any file may be named as a campaign; what is none is refused in words, and is left as it is.</summary>
public sealed class CampaignFileTests : IDisposable
{
    private readonly OwnFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_file_that_is_not_there_and_a_folder_are_refused()
    {
        Assert.StartsWith("there is no file", CampaignFile.Open(_folder.PathOf("none")).Why, StringComparison.Ordinal);
        Assert.EndsWith("is a folder; a campaign is a file", CampaignFile.Open(Path.GetTempPath()).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_and_another_database_are_refused_and_left_alone()
    {
        var text = _folder.PathOf("text");
        File.WriteAllText(text, "sequence: startup\n");
        Assert.Contains("is no campaign", CampaignFile.Open(text).Why, StringComparison.Ordinal);
        Assert.Equal("sequence: startup\n", File.ReadAllText(text));

        var other = _folder.PathOf("other");
        using (var connection = new SqliteConnection($"Data Source={other};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "CREATE TABLE run (id INTEGER)";
            command.ExecuteNonQuery();
        }

        var bytes = File.ReadAllBytes(other);
        Assert.EndsWith("is no campaign", CampaignFile.Open(other).Why, StringComparison.Ordinal);
        Assert.Equal(bytes, File.ReadAllBytes(other));
    }

    [Theory]
    [InlineData(0, "an earlier")]
    [InlineData(2, "a later")]
    public void A_campaign_of_another_form_is_refused_with_what_to_do(int form, string version)
    {
        var path = _folder.PathOf("old.campaign");
        DemoCampaign.Keep(path, DemoCampaign.Plan(), []).Dispose();
        using (var connection = new SqliteConnection($"Data Source={path};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = $"PRAGMA user_version = {form}";
            command.ExecuteNonQuery();
        }

        Assert.Equal($"{path} was made by {version} version of this program (form {form}, this one reads 1): run the campaign again into another file", CampaignFile.Open(path).Why);
    }

    [Fact]
    public void A_file_that_cannot_be_written_is_refused() =>
        Assert.Contains("cannot be written", CampaignFile.Create("/proc/none.campaign", DemoCampaign.Head(0), Kit.DemoPlant.Startup.Sequence!, DemoCampaign.Plan()).Why, StringComparison.Ordinal);
}
