using System.Globalization;

namespace EolSequencer.Model.Tests.Support;

/// <summary>Runs the code inside a <c>using</c> under another culture.</summary>
internal sealed class CultureScope : IDisposable
{
    private readonly CultureInfo _before = CultureInfo.CurrentCulture;
    private readonly CultureInfo _uiBefore = CultureInfo.CurrentUICulture;

    public CultureScope(string name)
    {
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(name);
    }

    /// <summary>Cultures that write numbers or fold case differently: comma and point groups, U+2212, dotless i, narrow blanks.</summary>
    public static TheoryData<string> Names => ["de-DE", "sv-SE", "tr-TR", "fr-FR"];

    public void Dispose()
    {
        CultureInfo.CurrentCulture = _before;
        CultureInfo.CurrentUICulture = _uiBefore;
    }
}
