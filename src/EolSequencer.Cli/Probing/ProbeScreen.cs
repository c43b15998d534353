namespace EolSequencer.Cli.Probing;

/// <summary>Lines of text, one at a time, from whatever thread.</summary>
internal sealed class ProbeScreen(TextWriter writer)
{
    private readonly Lock _turn = new();

    public void Write(string line)
    {
        lock (_turn)
        {
            writer.Write(line);
            writer.Write('\n');
            writer.Flush();
        }
    }

    /// <summary>What stands in front of the line that a person types.</summary>
    public void Prompt(string text)
    {
        lock (_turn)
        {
            writer.Write(text);
            writer.Flush();
        }
    }
}
