namespace EolSequencer.Model.Vehicles;

/// <summary>A part of a vehicle that has a serial, as <c>lock_unit</c> or <c>lock_unit[fl]</c>.</summary>
/// <param name="Kind">What it is: a serial is given once to all parts of a kind.</param>
/// <param name="At">Which of several on the vehicle: loop values with commas between; empty: the only one.</param>
public readonly record struct PartName(string Kind, string At)
{
    /// <summary>Reads what <see cref="ToString"/> writes; without brackets the whole text is the kind.</summary>
    public static PartName Read(string text) => text.IndexOf('[', StringComparison.Ordinal) is var bracket and > 0 && text[^1] == ']'
        ? new PartName(text[..bracket], text[(bracket + 1)..^1])
        : new PartName(text, "");

    /// <summary>The part that a step finds: its own name or the step's, with the loop values of the step.</summary>
    /// <param name="step">Full id with loop values.</param>
    /// <param name="name">As the author calls it; null: as the step's id without loop values.</param>
    public static PartName OfStep(string step, string? name)
    {
        var (path, values) = (new System.Text.StringBuilder(), new List<string>());
        for (var at = 0; at < step.Length; at++)
        {
            if (step[at] != '[')
            {
                path.Append(step[at]);
                continue;
            }

            var end = step.IndexOf(']', at);
            values.Add(step[(at + 1)..end]);
            at = end;
        }

        return new PartName(name ?? path.ToString(), string.Join(',', values));
    }

    public override string ToString() => At.Length == 0 ? Kind : $"{Kind}[{At}]";
}
