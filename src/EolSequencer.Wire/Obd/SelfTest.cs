namespace EolSequencer.Wire.Obd;

/// <summary>A self-test of the emissions system, as parameter 01 reports it.</summary>
/// <remarks>Source: SAE J1979, data bytes B and C of parameter 01.</remarks>
public enum SelfTest
{
    Misfire,
    FuelSystem,
    Components,

    Catalyst,
    HeatedCatalyst,
    EvaporativeSystem,
    SecondaryAir,

    /// <summary>Bit 4 of a spark-ignition engine; earlier editions: air conditioning refrigerant.</summary>
    ParticulateFilterOrRefrigerant,
    OxygenSensor,
    OxygenSensorHeater,
    ExhaustGasRecirculation,

    HydrocarbonCatalyst,
    NitrogenOxideAftertreatment,
    BoostPressure,
    ExhaustGasSensor,
    ParticulateFilter,
}
