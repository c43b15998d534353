namespace EolSequencer.Model.Plants;

/// <summary>Where a station asks for the order of a vehicle of which the plant has none.</summary>
/// <param name="Template">An absolute address with <c>{vin}</c> in it.</param>
/// <param name="Within">What asking may take, from the first to the last byte.</param>
public sealed record OrderAddress(string Template, TimeSpan Within)
{
    /// <summary>What stands for the vehicle's number.</summary>
    public const string VinMark = "{vin}";

    /// <summary>The address for one vehicle.</summary>
    public Uri For(string vin) => new(Template.Replace(VinMark, Uri.EscapeDataString(vin), StringComparison.Ordinal));
}
