using System.Text;

namespace EolSequencer.Records.Chain;

/// <summary>The private key on the disk: readable by its owner alone, made once and never replaced in silence.</summary>
internal static class StationKeyFile
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>The text of the key file; a new key when there is no file. A file that holds no such key is a <see cref="FormatException"/>.</summary>
    public static string ReadOrMake(string file)
    {
        if (!File.Exists(file)) return Make(file);
        var pem = File.ReadAllText(file);
        using var key = StationKey.FromPem(pem);
        return pem;
    }

    /// <summary>Whether accounts other than the owner may read the file; unknown, and so false, where there are no such rights.</summary>
    public static bool IsOpenToOthers(string file) =>
        !OperatingSystem.IsWindows() && (File.GetUnixFileMode(file) & ~OwnerOnly) != 0;

    private static string Make(string file)
    {
        using var key = StationKey.Make();
        var pem = key.ToPem();
        var draft = file + ".new";
        File.Delete(draft);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnerOnly;
        using (var stream = new FileStream(draft, options))
        {
            stream.Write(Encoding.ASCII.GetBytes(pem));
            stream.Flush(flushToDisk: true);
        }

        // Renamed when it is whole: half a key would keep the folder shut for ever.
        File.Move(draft, file, overwrite: false);
        return pem;
    }
}
