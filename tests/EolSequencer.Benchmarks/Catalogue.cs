namespace EolSequencer.Benchmarks;

/// <summary>The benchmarks by name. Each prints lines <c>name: value unit</c> and names the machine.</summary>
internal static class Catalogue
{
    private static readonly Dictionary<string, Func<string[], int>> Runs = new(StringComparer.Ordinal)
    {
        ["day"] = Day.DayBenchmark.Run,
        ["expressions"] = Expressions.ExpressionsBenchmark.Run,
        ["durable"] = Durable.DurableBenchmark.Run,
        ["whatif"] = WhatIf.WhatIfBenchmark.Run,
        ["start"] = Start.StartBenchmark.Run,
        ["editor"] = Editor.EditorBenchmark.Run,
        ["load"] = Load.LoadBenchmark.Run,
        ["campaign"] = Campaign.CampaignBenchmark.Run,
        ["growth"] = Load.GrowthBenchmark.Run,
    };

    public static Func<string[], int>? Find(string name) => Runs.GetValueOrDefault(name);

    public static int Usage()
    {
        Console.WriteLine($"usage: dotnet run -c Release --project tests/EolSequencer.Benchmarks -- {string.Join('|', Runs.Keys)} [small]");
        return 2;
    }
}
