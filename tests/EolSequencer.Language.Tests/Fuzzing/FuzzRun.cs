using System.Globalization;
using System.Text;
using CsCheck;
using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Tests.Fuzzing;

/// <summary>Many inputs to one reader, from one seed, on a thread of its own that may hang.</summary>
/// <param name="seed">The same seed gives the same inputs.</param>
internal sealed class FuzzRun(FuzzTarget target, int inputs, uint seed)
{
    /// <summary>How long one input may take; a loaded computer is slow, a hang is forever.</summary>
    public static readonly TimeSpan MostTime = TimeSpan.FromSeconds(30);

    private volatile string _text = "";
    private volatile int _number;
    private volatile Exception? _fault;

    /// <summary>How many inputs were taken as good.</summary>
    public int Accepted { get; private set; }

    /// <summary>Fails at the first input that is not read as it should be, or that takes too long.</summary>
    public void Run()
    {
        var thread = new Thread(ReadAll) { Name = "fuzzing", IsBackground = true };
        thread.Start();
        for (var (number, since) = (-1, TimeSpan.Zero); !thread.Join(100); since += TimeSpan.FromMilliseconds(100))
        {
            if (_number != number) (number, since) = (_number, TimeSpan.Zero);
            if (since > MostTime) Assert.Fail($"it takes more than {MostTime}: {Where}");
        }

        if (_fault is { } fault) Assert.Fail($"{fault.Message}\n{Where}\n{fault}");
    }

    private string Where => string.Create(CultureInfo.InvariantCulture, $"{target.Name}, seed {seed}, input {_number}: {JsonText(_text)}");

    private void ReadAll()
    {
        try
        {
            for (var number = 0; number < inputs; number++)
            {
                _text = target.Inputs.Generate(new PCG((uint)number, seed), null, out _);
                _number = number;
                Read(_text);
            }
        }
        catch (Exception fault)
        {
            _fault = fault; // The waiting thread tells it, with the input.
        }
    }

    private void Read(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var (isTaken, findings) = Once(bytes);
        var (again, same) = Once(bytes);
        Assert.Equal(isTaken, again);
        Assert.Equal(findings, same);
        if (isTaken) Accepted++;
    }

    private (bool IsTaken, string Findings) Once(byte[] bytes)
    {
        var report = new Report();
        var source = Language.Source.SourceText.TryDecode(Texts.FileName, bytes, report);
        var isTaken = source is not null && target.Accepts(source, report);
        Assert.True(isTaken || report.HasErrors, "it was refused without a reason");
        foreach (var finding in report.InOrder)
        {
            Assert.Equal(Texts.FileName, finding.Place.File);
            Assert.NotEqual("", finding.Code.Id);
            if (source is null) continue;
            Assert.InRange(finding.Place.Line, 1, source.LineCount);
            Assert.InRange(finding.Place.Column, 1, source.Line(finding.Place.Line).Length + 2);
        }

        return (isTaken, string.Join('\n', report.InOrder));
    }

    private static string JsonText(string text) => System.Text.Json.JsonSerializer.Serialize(text);
}
