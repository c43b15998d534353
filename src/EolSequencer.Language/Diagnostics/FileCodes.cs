namespace EolSequencer.Language.Diagnostics;

/// <summary>What can keep a file from being read at all.</summary>
public static class FileCodes
{
    public static readonly DiagnosticCode Missing = new("FIL001", Severity.Error,
        "There is no such file", "check the name and the folder you are in");

    public static readonly DiagnosticCode IsFolder = new("FIL002", Severity.Error,
        "A folder stands where a file is wanted", "name a file in it");

    public static readonly DiagnosticCode NotAllowed = new("FIL003", Severity.Error,
        "The file may not be read", "let the account that runs this program read the file");

    public static readonly DiagnosticCode Unreadable = new("FIL004", Severity.Error,
        "Reading the file failed", "check the disk or the network drive, then try again");

    public static readonly DiagnosticCode TooLarge = new("FIL005", Severity.Error,
        "The file is larger than 4 MiB", "split it, for example into fragments");

    public static readonly DiagnosticCode Changing = new("FIL006", Severity.Error,
        "The file changes while it is being read", "save it once and completely, then try again");

    public static readonly DiagnosticCode NotText = new("FIL007", Severity.Error,
        "This is no text file", "name a YAML file, saved as UTF-8");

    public static readonly DiagnosticCode NotUtf8 = new("FIL008", Severity.Error,
        "The file is not in UTF-8", "save it again with the encoding UTF-8");
}
