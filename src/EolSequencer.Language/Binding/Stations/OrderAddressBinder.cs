using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Binding.Stations;

/// <summary>Reads where a station asks for orders: encrypted, unless it is this computer or the file says otherwise.</summary>
internal static class OrderAddressBinder
{
    private static readonly TimeSpan Usual = TimeSpan.FromSeconds(3);

    /// <summary>The keys.</summary>
    public static MapShape Shape { get; } = new(
        "an address for orders",
        [new("url", Forms.Text, "https address with {vin} in it; it answers with an order as JSON")],
        [
            new("within", Forms.Duration(TimeSpan.FromMilliseconds(100), TimeSpan.FromMinutes(1)), "what asking may take; 3 s if nothing is said"),
            new("unencrypted", Forms.YesNo, "yes: http is allowed to another computer as well"),
        ]);

    /// <summary>The address; null: already reported.</summary>
    public static OrderAddress? Bind(MapReader keys)
    {
        var within = keys.Duration("within") ?? Usual;
        var isPlainAllowed = keys.YesNo("unencrypted") ?? false;
        if (keys.Text("url") is not { } text) return null;
        if (WhyNot(text.Text, isPlainAllowed) is not { } why) return new OrderAddress(text.Text, within);
        keys.Report.Add(StationCodes.BadAddress, text.Place, $"{Shown.Quoted(text.Text)} {why}");
        return null;
    }

    private static string? WhyNot(string text, bool isPlainAllowed)
    {
        var path = text.IndexOf(OrderAddress.VinMark, StringComparison.Ordinal);
        if (path < 0) return $"has no {OrderAddress.VinMark}";
        if (!Uri.TryCreate(text.Replace(OrderAddress.VinMark, "VIN", StringComparison.Ordinal), UriKind.Absolute, out var uri) || uri.Host.Length == 0) return "is no address";
        if (uri.UserInfo.Length > 0) return "holds a name or password, which do not belong into a file";
        if (uri.Authority.Contains("VIN", StringComparison.OrdinalIgnoreCase) && !text.Contains(uri.Authority, StringComparison.OrdinalIgnoreCase)) return $"has {OrderAddress.VinMark} in the name of the computer";
        if (uri.Scheme == Uri.UriSchemeHttps) return null;
        if (uri.Scheme != Uri.UriSchemeHttp) return $"is for {uri.Scheme}, not https";
        return uri.IsLoopback || isPlainAllowed ? null : "is not encrypted, and goes to another computer";
    }
}
