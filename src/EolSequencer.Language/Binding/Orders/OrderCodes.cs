using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Binding.Orders;

/// <summary>What is wrong with an order. Without a right order no vehicle is tested.</summary>
public static class OrderCodes
{
    public static readonly DiagnosticCode BadVin = Error("ORD001",
        "A vehicle identification number that is none", "compare with the vehicle's plate; nothing is corrected here");

    public static readonly DiagnosticCode DoubtfulVin = new("ORD002", Severity.Warning,
        "A vehicle identification number that may be mistyped", "compare with the vehicle's plate");

    public static readonly DiagnosticCode UnknownOption = Error("ORD003",
        "An option that the vehicle type does not have", "leave it out, or correct the name");

    public static readonly DiagnosticCode MissingOption = Error("ORD004",
        "An option is not said", "say for each option of the vehicle type what is fitted");

    public static readonly DiagnosticCode Impossible = Error("ORD005",
        "A combination of options that nobody builds", "check the order");

    public static readonly DiagnosticCode UnknownFact = Error("ORD006",
        "A fact that orders of this vehicle type do not have", "leave it out, or correct the name");

    public static readonly DiagnosticCode MissingFact = Error("ORD007",
        "A fact is not said", "say each fact that the vehicle type's  order  names");

    public static readonly DiagnosticCode NotFitted = Error("ORD008",
        "A fact about something that this vehicle does not have", "leave it out, or check the options");

    public static readonly DiagnosticCode BadId = Error("ORD009",
        "An order number that cannot be one", "write letters, digits and  - _ . /");

    public static readonly DiagnosticCode NoOrder = Error("ORD010",
        "No order for this vehicle", "check the number, or let the order be made");

    public static readonly DiagnosticCode SeveralOrders = Error("ORD011",
        "More than one order for one vehicle", "keep one of them");

    public static readonly DiagnosticCode OtherType = Error("ORD012",
        "The order is for another vehicle type than the sequence", "name the sequence of its type, or leave the sequence out");

    public static readonly DiagnosticCode OtherVehicle = Error("ORD013",
        "The order that was asked for is another vehicle's", "tell whoever keeps the orders; nothing was kept of it");

    public static readonly DiagnosticCode NotHad = Error("ORD014",
        "An order that could not be had from where the station asks", "ask again, or let the order be put into the plant's folder");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
