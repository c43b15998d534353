namespace EolSequencer.Records.People;

/// <summary>What a person may do. A person may have several.</summary>
public enum Role
{
    /// <summary>Runs vehicles, and opens nonconformities by hand.</summary>
    Operator,

    /// <summary>Repairs and reworks.</summary>
    Repairer,

    /// <summary>Looks after sequences and stations; asks for concessions.</summary>
    Engineer,

    /// <summary>Grants concessions, releases vehicles, places and lifts holds.</summary>
    Quality,

    /// <summary>Looks after people; nothing else.</summary>
    Administrator,
}

/// <summary>Words of roles.</summary>
public static class Roles
{
    private static readonly Role[] All = Enum.GetValues<Role>();

    /// <summary>Every role by its word, for messages.</summary>
    public static string Words { get; } = string.Join(", ", All.Select(Word));

    /// <summary>As in records and on the command line.</summary>
    public static string Word(this Role role) => role switch
    {
        Role.Operator => "operator",
        Role.Repairer => "repairer",
        Role.Engineer => "engineer",
        Role.Quality => "quality",
        Role.Administrator => "administrator",
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "there are five roles"),
    };

    /// <summary>The role of a word; null for any other text.</summary>
    public static Role? Find(string word)
    {
        foreach (var role in All)
        {
            if (role.Word() == word) return role;
        }

        return null;
    }
}
