using System.Net;
using System.Text.Json;
using EolSequencer.Language.Binding.Orders;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Source;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Ordering;

/// <summary>Asks for the order of a vehicle over HTTP. Nothing of an answer is kept unless it is a whole order of that vehicle.</summary>
public static class OrderAsking
{
    /// <summary>An order is some kilobytes; nobody has to hold more in memory.</summary>
    public const int MostBytes = 256 * 1024;

    // One for the process, as the framework asks for. A redirect could lead anywhere, so none is followed; nothing is sent but the number.
    private static readonly HttpClient Client = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false, PooledConnectionLifetime = TimeSpan.FromMinutes(5) })
    {
        Timeout = Timeout.InfiniteTimeSpan,
    };

    /// <summary>The order of a vehicle. Trouble is a diagnostic, never an exception.</summary>
    /// <param name="plant">A file or folder of the plant whose vehicle types there are.</param>
    /// <param name="vin">The vehicle's number as it was scanned or typed.</param>
    /// <param name="known">A vehicle type that is loaded already; an order for it need not load its own.</param>
    public static OrderResult Ask(OrderAddress address, string plant, string vin, ExpressionCache cache, VehicleType? known)
    {
        if (Vin.TryParse(vin, CheckDigitRule.Off) is { Vin: null, Fault: var fault }) return Refused(address.Template, $"'{vin}' is no vehicle identification number ({fault}), so nobody was asked");
        var uri = address.For(vin);
        var (bytes, why) = ReceiveAsync(uri, address.Within).GetAwaiter().GetResult();
        return bytes is null ? Refused(uri.ToString(), why!) : OrderLoader.LoadAnswer(plant, uri.ToString(), bytes, vin, cache, known);
    }

    private static OrderResult Refused(string from, string why)
    {
        var report = new Report();
        report.Add(OrderCodes.NotHad, SourcePlace.None with { File = from }, why);
        return new OrderResult(null, report.InOrder);
    }

    private static async Task<(byte[]? Bytes, string? Why)> ReceiveAsync(Uri uri, TimeSpan within)
    {
        using var limit = new CancellationTokenSource(within);
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, uri);
            request.Headers.Accept.ParseAdd("application/json");
            using var response = await Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, limit.Token);
            return WhyNot(response) is { } why ? (null, why) : await ReadAsync(response, limit.Token);
        }
        catch (OperationCanceledException)
        {
            return (null, $"no whole answer within {within.TotalSeconds} s");
        }
        catch (Exception fault) when (fault is HttpRequestException or IOException)
        {
            return (null, fault.InnerException is { } inner ? $"{fault.Message} ({inner.Message})" : fault.Message);
        }
    }

    private static string? WhyNot(HttpResponseMessage response)
    {
        var code = (int)response.StatusCode;
        if (response.StatusCode == HttpStatusCode.NotFound) return "there is no order for this vehicle either (404)";
        if (code is >= 300 and < 400) return $"it leads elsewhere ({code}), to {response.Headers.Location?.ToString() ?? "nowhere"}; that is not followed";
        if (code != 200) return $"it answers {code} {response.ReasonPhrase}, 200 is expected";
        if (response.Content.Headers.ContentType?.MediaType is var type && type != "application/json") return $"it answers with {type ?? "nothing that says what it is"}, application/json is expected";
        return response.Content.Headers.ContentLength > MostBytes ? TooLarge : null;
    }

    private static string TooLarge => $"the answer has more than {MostBytes / 1024} KiB, the most that an order may have";

    private static async Task<(byte[]? Bytes, string? Why)> ReadAsync(HttpResponseMessage response, CancellationToken limit)
    {
        await using var body = await response.Content.ReadAsStreamAsync(limit);
        var bytes = new byte[MostBytes + 1];
        var read = await body.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, limit);
        if (read > MostBytes) return (null, TooLarge);
        try
        {
            using var document = JsonDocument.Parse(bytes.AsMemory(0, read));
            return document.RootElement.ValueKind == JsonValueKind.Object ? (bytes[..read], null) : (null, "the answer is no JSON object");
        }
        catch (JsonException fault)
        {
            return (null, $"the answer is no JSON: {fault.Message}");
        }
    }
}
