using System.Xml;
using System.Xml.Linq;
using EolSequencer.Station.Explaining;

namespace EolSequencer.Cli.Explaining;

/// <summary>Elements of a page that is XML and HTML at once.</summary>
internal static class Tags
{
    private static readonly XNamespace Html = "http://www.w3.org/1999/xhtml";

    /// <summary>An element with a begin and an end tag, also when there is nothing in it; pairs among its content are attributes.</summary>
    public static XElement Tag(string name, params object?[] content)
    {
        var element = new XElement(Html + name, content.Select(Safe));
        // HTML knows no self-closing form for it.
        if (element.IsEmpty) element.Add("");
        return element;
    }

    /// <summary>An element that never has content.</summary>
    public static XElement Void(string name, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        var element = new XElement(Html + name);
        foreach (var (attribute, value) in attributes) element.Add(new XAttribute(attribute, Known(value)));
        return element;
    }

    public static XAttribute Class(string names) => new("class", names);

    /// <summary>A text, marked with its language when an author said which.</summary>
    public static object Written(Wording text) => text.Language is { Length: > 0 } language
        ? Tag("span", ("lang", language), text.Text)
        : Known(text.Text);

    private static object? Safe(object? content) => content switch
    {
        string text => Known(text),
        (string name, string value) => new XAttribute(name, Known(value)),
        IEnumerable<object?> several => several.Select(Safe),
        _ => content,
    };

    /// <summary>Without characters that no XML may hold, which an author can have copied from anywhere.</summary>
    private static string Known(string text) => text.All(XmlConvert.IsXmlChar) ? text : new string([.. Characters(text)]);

    private static IEnumerable<char> Characters(string text)
    {
        for (var at = 0; at < text.Length; at++)
        {
            if (at + 1 < text.Length && XmlConvert.IsXmlSurrogatePair(text[at + 1], text[at]))
            {
                yield return text[at++];
                yield return text[at];
            }
            else
            {
                yield return XmlConvert.IsXmlChar(text[at]) ? text[at] : '\uFFFD';
            }
        }
    }
}
