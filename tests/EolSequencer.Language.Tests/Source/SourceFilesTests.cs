using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;

namespace EolSequencer.Language.Tests.Source;

/// <summary>A file is read whole or not at all, and an author who names the wrong one is told so.</summary>
public sealed class SourceFilesTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("eol-files-").FullName;
    private readonly Report _report = new();

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_file_comes_with_its_bytes_and_path()
    {
        var path = Write("a.yaml", "key: 1\r\n");
        var source = SourceFiles.TryRead(path, _report)!;
        Assert.Equal("key: 1\r\n", source.Text);
        Assert.Equal(path, source.Path);
        Assert.Empty(_report.InOrder);
    }

    [Fact]
    public void A_file_below_the_working_folder_is_shown_relative_to_it()
    {
        var name = $"eol-{Guid.NewGuid():N}.yaml";
        var path = Path.Combine(Environment.CurrentDirectory, name);
        File.WriteAllText(path, "key: 1");
        try
        {
            Assert.Equal(name, SourceFiles.TryRead(path, _report)!.Path);
            Assert.Equal(name, SourceFiles.TryRead(Path.Combine(".", name), _report)!.Path);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_missing_file_is_reported_with_its_name_alone()
    {
        var path = Path.Combine(_folder, "none.yaml");
        Refused(path, FileCodes.Missing);
        Assert.StartsWith(path + ": error FIL001: ", _report.InOrder[0].ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("a\0b")]
    public void A_name_that_no_file_can_have_is_missing(string path) => Refused(path, FileCodes.Missing);

    [Fact]
    public void A_folder_is_no_file() => Refused(_folder, FileCodes.IsFolder);

    [Fact]
    public void A_binary_file_is_no_text()
    {
        var path = Path.Combine(_folder, "picture.png");
        File.WriteAllBytes(path, [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0x00, 0x00]);
        Refused(path, FileCodes.NotText);
    }

    [Fact]
    public void A_file_too_large_is_not_read_to_its_end()
    {
        var path = Path.Combine(_folder, "big.yaml");
        using (var file = File.Create(path)) file.SetLength(100L * 1024 * 1024);
        Refused(path, FileCodes.TooLarge);
    }

    [Fact]
    public void No_permission_is_said_plainly() =>
        Refused(Write("a.yaml", "key: 1"), FileCodes.NotAllowed, _ => throw new UnauthorizedAccessException());

    [Fact]
    public void A_fault_of_the_disk_is_passed_on_in_its_own_words()
    {
        Refused(Write("a.yaml", "key: 1"), FileCodes.Unreadable, _ => throw new IOException("device not ready"));
        Assert.Contains("device not ready", _report.InOrder[0].Found);
    }

    [Fact, Trait("case", "YML-12")]
    public void A_file_that_grows_while_it_is_read_is_read_again()
    {
        var path = Write("a.yaml", "first: 1\n");
        var reads = 0;
        var source = SourceFiles.TryRead(path, _report, name =>
        {
            var bytes = File.ReadAllBytes(name);
            if (++reads == 1) File.AppendAllText(name, "second: 2\n");
            return bytes;
        });
        Assert.Equal("first: 1\nsecond: 2\n", source!.Text);
        Assert.Equal(2, reads);
    }

    [Fact, Trait("case", "YML-12")]
    public void A_file_that_never_comes_to_rest_is_refused_and_half_of_it_is_never_used()
    {
        var path = Write("a.yaml", "key: 1\n");
        Refused(path, FileCodes.Changing, name =>
        {
            var bytes = File.ReadAllBytes(name);
            File.AppendAllText(name, "more: 2\n");
            return bytes;
        });
    }

    [Fact, Trait("case", "YML-12")]
    public void A_file_rewritten_with_the_same_length_is_noticed_by_its_time()
    {
        var path = Write("a.yaml", "key: 1\n");
        var reads = 0;
        var source = SourceFiles.TryRead(path, _report, name =>
        {
            var bytes = File.ReadAllBytes(name);
            if (++reads > 1) return bytes;
            File.WriteAllText(name, "key: 2\n");
            File.SetLastWriteTimeUtc(name, File.GetLastWriteTimeUtc(name).AddSeconds(1));
            return bytes;
        });
        Assert.Equal("key: 2\n", source!.Text);
    }

    private string Write(string name, string text)
    {
        var path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    private void Refused(string path, DiagnosticCode code, Func<string, byte[]>? readBytes = null)
    {
        Assert.Null(readBytes is null ? SourceFiles.TryRead(path, _report) : SourceFiles.TryRead(path, _report, readBytes));
        Assert.Equal(code, Assert.Single(_report.InOrder).Code);
    }
}
