namespace EolSequencer.Simulators.Physics;

/// <summary>What a person sees, hears or feels and no wire reports. Each holds the place of what is wrong; empty: all is well.</summary>
internal sealed class Impressions
{
    /// <summary>Plate, stamped number or label shows another number.</summary>
    public string PlateDiffers { get; set; } = "";

    public bool SteeringIsNotchy { get; set; }

    public bool DriveIsNoisy { get; set; }

    public string Leak { get; set; } = "";
}
