using System.Collections.Immutable;
using System.Security.Cryptography;

namespace EolSequencer.Language.Expressions;

/// <summary>
/// Keeps compiled expressions on disk from one start to the next. Cached code is code: it is only used when it is, byte for
/// byte, what the list of compiled units says; anything else is thrown away and compiled again.
/// </summary>
/// <remarks>
/// A unit is three files named by its key: the assembly, its debugging symbols, and what was found out about each
/// expression. The list beside them (<c>compiled.list</c>) has a line <c>KEY HASH</c> for each, the hash over all three.
/// A disk that cannot be written or read costs time, never a run.
/// </remarks>
public sealed class ExpressionCache
{
    /// <summary>The units kept; the oldest go first.</summary>
    public const int MostUnits = 200;

    private const string ListName = "compiled.list";

    private readonly string? _folder;

    private ExpressionCache(string? folder, LiveCode? live)
    {
        _folder = folder;
        Live = live;
    }

    /// <summary>Code that is kept expression by expression, for files that are being written; null: a load is one unit.</summary>
    internal LiveCode? Live { get; }

    /// <summary>Nothing is kept.</summary>
    public static ExpressionCache None { get; } = new(null, null);

    /// <summary>A cache in a folder, which is made when something is to be kept. Several processes may share it.</summary>
    public static ExpressionCache In(string folder) => new(folder, null);

    /// <summary>Keeps what came of each expression in memory, so that a file with one change compiles one expression.</summary>
    internal static ExpressionCache InMemory(LiveCode live) => new(null, live);

    /// <summary>A unit stored earlier, whole and unchanged; otherwise null.</summary>
    internal CompiledUnit? Find(string key)
    {
        if (_folder is null) return null;
        try
        {
            if (HashListed(key) is not { } listed) return null;
            var (code, symbols, facts) = (File.ReadAllBytes(CodeOf(key)), File.ReadAllBytes(SymbolsOf(key)), File.ReadAllBytes(FactsOf(key)));
            if (HashOf(code, symbols, facts) == listed) return new CompiledUnit(code, symbols, UnitFacts.Read(facts));
            Delete(key);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Not there, or not for us: it is compiled again.
        }

        return null;
    }

    /// <summary>Keeps a unit. Each file appears whole or not at all, the line in the list last.</summary>
    internal void Store(string key, CompiledUnit unit)
    {
        if (_folder is null) return;
        try
        {
            Directory.CreateDirectory(_folder);
            var facts = UnitFacts.Write(unit.Expressions);
            Put(CodeOf(key), unit.Code);
            Put(SymbolsOf(key), unit.Symbols);
            Put(FactsOf(key), facts);
            List(key, HashOf(unit.Code, unit.Symbols, facts));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // The next start compiles again.
        }
    }

    private string CodeOf(string key) => Path.Combine(_folder!, key + ".dll");

    private string SymbolsOf(string key) => Path.Combine(_folder!, key + ".pdb");

    private string FactsOf(string key) => Path.Combine(_folder!, key + ".facts");

    private string ListPath => Path.Combine(_folder!, ListName);

    private string? HashListed(string key) =>
        Lines().LastOrDefault(line => line.StartsWith(key + " ", StringComparison.Ordinal))?[(key.Length + 1)..];

    private string[] Lines() => File.Exists(ListPath) ? File.ReadAllLines(ListPath) : [];

    private void List(string key, string hash)
    {
        var others = Lines().Where(line => !line.StartsWith(key + " ", StringComparison.Ordinal)).ToList();
        foreach (var line in others.SkipLast(MostUnits - 1)) Delete(line.Split(' ')[0]);
        Put(ListPath, System.Text.Encoding.UTF8.GetBytes(string.Join('\n', others.TakeLast(MostUnits - 1).Append($"{key} {hash}")) + "\n"));
    }

    private void Delete(string key)
    {
        File.Delete(CodeOf(key));
        File.Delete(SymbolsOf(key));
        File.Delete(FactsOf(key));
    }

    private static void Put(string path, byte[] bytes)
    {
        var temporary = $"{path}.{Guid.NewGuid():N}";
        File.WriteAllBytes(temporary, bytes);
        File.Move(temporary, path, overwrite: true);
    }

    private static string HashOf(params ReadOnlySpan<byte[]> files)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in files) hash.AppendData(SHA256.HashData(file));
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
