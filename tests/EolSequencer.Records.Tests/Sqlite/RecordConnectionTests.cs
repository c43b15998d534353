using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Sqlite;

/// <summary>Whether a reported step survives a pulled plug hangs on two settings that nobody sees.</summary>
public sealed class RecordConnectionTests : IDisposable
{
    private readonly TempFolder _folder = new();

    /// <remarks>Source: SQLite documentation, PRAGMA synchronous: 2 is FULL, 1 is NORMAL; in WAL mode only FULL syncs the log after every transaction.</remarks>
    [Theory]
    [InlineData(true, 2)]
    [InlineData(false, 1)]
    public void A_durable_connection_syncs_every_transaction(bool durable, long synchronous)
    {
        using var connection = RecordConnection.ForWriting(_folder.Database, durable, RecordOptions.Usual);

        Assert.Equal(synchronous, connection.Number("PRAGMA synchronous"));
        Assert.Equal(1, connection.Number("SELECT journal_mode = 'wal' FROM pragma_journal_mode"));
    }

    [Fact]
    public void Rolling_back_what_was_rolled_back_already_does_nothing()
    {
        using var connection = RecordConnection.ForWriting(_folder.Database, durable: true, RecordOptions.Usual);

        connection.Begin();
        connection.Rollback();
        connection.Rollback();

        connection.Begin();
        connection.Commit();
    }

    [Fact]
    public void A_statement_keeps_every_kind_of_value()
    {
        using var connection = RecordConnection.ForWriting(_folder.Database, durable: false, RecordOptions.Usual);
        var longText = new string('é', 2000);
        var echo = connection.Prepare("SELECT ?, ?, ?, ?, ?, ?, ?");

        echo.Int(1, long.MinValue).Int(2, null).Real(3, 0.1).Real(4, null).Text(5, longText).Text(6, null).Blob(7, []);
        Assert.True(echo.Next());

        Assert.Equal((long.MinValue, null), (echo.Int(0), echo.IntOrNull(1)));
        Assert.Equal((0.1, null), (echo.RealOrNull(2), echo.RealOrNull(3)));
        Assert.Equal((longText, null), (echo.Text(4), echo.TextOrNull(5)));
        Assert.True(echo.TextIs(4, longText) && echo.TextIs(5, null) && !echo.TextIs(5, "") && !echo.TextIs(4, "e"));
        Assert.False(echo.IsNull(6));
        Assert.False(echo.Next());
    }

    public void Dispose() => _folder.Dispose();
}
