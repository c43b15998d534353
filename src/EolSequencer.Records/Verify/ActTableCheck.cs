using System.Security.Cryptography;
using System.Text;
using EolSequencer.Records.People;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Verify;

/// <summary>Compares the tables folded from acts with what the acts of the ledger come to.</summary>
internal static class ActTableCheck
{
    public static void Walk(RecordConnection connection, LedgerPicture ledger, FindingList findings)
    {
        foreach (var (table, rows) in ledger.Tables.Named) Compare(connection, table, rows, findings);
        CompareSecrets(connection, ledger.Tables.People.All(), findings);
    }

    private static void Compare(RecordConnection connection, string table, IReadOnlyDictionary<string, string> expected, FindingList findings)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var rows = connection.Prepare($"SELECT key, row FROM {table} ORDER BY key");
        while (rows.Next())
        {
            var key = rows.Text(0);
            seen.Add(key);
            if (!expected.TryGetValue(key, out var row)) findings.Add(FindingKind.Table, $"{table} '{key}' stands in the table and in no act");
            else if (!rows.TextIs(1, row)) findings.Add(FindingKind.Table, $"{table} '{key}' is {rows.Text(1)}, the acts say {row}");
        }

        foreach (var key in expected.Keys.Where(key => !seen.Contains(key))) findings.Add(FindingKind.Table, $"{table} '{key}' is missing, the acts say {expected[key]}");
    }

    private static void CompareSecrets(RecordConnection connection, IReadOnlyList<PersonRow> people, FindingList findings)
    {
        var kept = new Dictionary<string, string>(StringComparer.Ordinal);
        var rows = connection.Prepare("SELECT badge, hash FROM person_secret ORDER BY badge");
        while (rows.Next()) kept.Add(rows.Text(0), Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(rows.Text(1)))));
        foreach (var person in people)
        {
            if (!kept.Remove(person.Badge, out var found)) findings.Add(FindingKind.Table, $"the secret of person '{person.Badge}' is missing");
            else if (found != person.Secret) findings.Add(FindingKind.Table, $"the secret of person '{person.Badge}' is not the one that the acts say was set");
        }

        foreach (var badge in kept.Keys) findings.Add(FindingKind.Table, $"a secret is kept for '{badge}', who is no person of the acts");
    }
}
