namespace EolSequencer.Records.Administration;

/// <summary>What somebody did to a record that is no event of a run: the content of a ledger entry. One record for each kind.</summary>
/// <remarks>
/// Its properties are its fields in the hashed bytes, in the order they are declared: a later version may add an optional one at
/// the end, and none is ever renamed. Nothing secret may stand in it.
/// </remarks>
internal abstract record Act;

/// <summary>The public half of a station key became known to the record.</summary>
/// <param name="Public">SHA-256 of the public key, hex, lower case.</param>
/// <param name="File">Name of the file that holds the private half.</param>
internal sealed record KeyMade(string Public, string File) : Act;

/// <summary>The tables of the record were made or brought up to date.</summary>
/// <param name="Version">Number of the newest script.</param>
internal sealed record SchemaMade(string Version) : Act;
