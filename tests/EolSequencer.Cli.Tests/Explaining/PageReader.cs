using System.Xml;
using System.Xml.Linq;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;

namespace EolSequencer.Cli.Tests.Explaining;

/// <summary>Reads a page twice, as XML (the framework's reader) and as a browser does (AngleSharp, the HTML5 parsing algorithm), and holds the two to the same.</summary>
internal static class PageReader
{
    public static IDocument Read(string page)
    {
        var html = new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(page);
        using var reader = XmlReader.Create(new StringReader(page), new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        var xml = XDocument.Load(reader, LoadOptions.PreserveWhitespace);
        Assert.Equal(xml.Descendants().Select(element => element.Name.LocalName), html.All.Select(element => element.LocalName));
        Assert.Equal(Body(xml), html.Body!.TextContent.TrimEnd());
        return html;
    }

    private static string Body(XDocument xml) => xml.Descendants().Single(element => element.Name.LocalName == "body").Value.TrimEnd();
}
