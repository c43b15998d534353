using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads the path of a picture and looks for the file.</summary>
internal static class PictureFile
{
    private static readonly string[] Endings = [".svg", ".png", ".jpg", ".jpeg", ".webp"];

    /// <summary>The path below the plant's folder; null: absent, or already reported.</summary>
    public static string? Read(MapReader keys, Scope scope)
    {
        if (keys.Text("picture") is not { } text) return null;
        var root = scope.Context.Folder.Root;
        var full = Path.GetFullPath(text.Text, root);
        if (!full.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal) || !Endings.Contains(Path.GetExtension(full).ToLowerInvariant()))
        {
            scope.Report.Add(SequenceCodes.BadPicture, text.Place, $"{Shown.Quoted(text.Text)} is no picture in the plant's folder");
            return null;
        }

        if (!scope.Context.Folder.Texts.HavePictures) return text.Text;
        if (!File.Exists(full))
        {
            scope.Report.Add(SequenceCodes.NoPicture, text.Place, $"there is no file {Shown.Quoted(text.Text)} in the plant's folder");
            return null;
        }

        if (PictureContent.IsOf(full)) return text.Text;
        scope.Report.Add(SequenceCodes.OtherPicture, text.Place, $"what is in {Shown.Quoted(text.Text)} is no {Path.GetExtension(full)[1..]} picture");
        return null;
    }
}
