using System.Xml.Linq;
using EolSequencer.Station.Explaining;
using static EolSequencer.Cli.Explaining.Tags;

namespace EolSequencer.Cli.Explaining;

/// <summary>The picture beside a prompt, inside the page itself.</summary>
internal static class Picture
{
    /// <summary>The picture, or words when its file cannot be read; null when the step has none.</summary>
    public static XElement? Of(ExplainedStep step)
    {
        if (step.Picture is not { } path) return null;
        try
        {
            var data = $"data:{MediaType(path)};base64,{Convert.ToBase64String(File.ReadAllBytes(path))}";
            return Void("img", ("src", data), ("alt", $"picture for {step.Id}"));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return Tag("p", $"The picture {Path.GetFileName(path)} cannot be read: {fault.Message}");
        }
    }

    private static string MediaType(string path) => Path.GetExtension(path).ToLowerInvariant() switch
    {
        ".svg" => "image/svg+xml",
        ".png" => "image/png",
        ".webp" => "image/webp",
        _ => "image/jpeg",
    };
}
