using System.Reflection;

namespace EolSequencer.Language.Diagnostics;

/// <summary>Every diagnostic code of this room, for the language reference and for looking one up.</summary>
public static class DiagnosticCatalogue
{
    private static readonly Lazy<IReadOnlyList<DiagnosticCode>> Declared = new(Collect);

    /// <summary>All codes in the order of their ids.</summary>
    public static IReadOnlyList<DiagnosticCode> All => Declared.Value;

    // A family joins by declaring its static class: there is no second list to keep in step.
    private static IReadOnlyList<DiagnosticCode> Collect() =>
    [
        .. typeof(DiagnosticCatalogue).Assembly.GetTypes()
            .Where(type => type is { IsAbstract: true, IsSealed: true } && type.Name.EndsWith("Codes", StringComparison.Ordinal))
            .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public))
            .Where(field => field.FieldType == typeof(DiagnosticCode))
            .Select(field => (DiagnosticCode)field.GetValue(null)!)
            .OrderBy(code => code.Id, StringComparer.Ordinal),
    ];
}
