using EolSequencer.Model.Devices;
using EolSequencer.Model.Values;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>
/// Two tables know the parameters of service 01: one judges what an author writes, the other reads bytes. Where they
/// differ, a window would be checked in one unit and judged in another.
/// </summary>
public class ParameterAgreementTests
{
    [Fact]
    public void What_an_author_may_write_is_what_the_bytes_give()
    {
        for (var id = 0; id < 256; id++)
        {
            if (ObdParameters.ShapeOf(id) is not { } shape) continue;
            var value = Assert.Single(ParameterTable.Find((byte)id)!.Values);
            Assert.Equal((id, ValueKind.Number, value.Unit), (id, shape.Kind, shape.Unit));
        }
    }

    [Fact]
    public void Every_parameter_with_one_value_may_be_written()
    {
        var readable = ParameterTable.All.Where(row => row.Values.Length == 1).Select(row => row.Id);
        Assert.Equal(readable, Enumerable.Range(0, 256).Where(id => ObdParameters.ShapeOf(id) is not null).Select(id => (byte)id));
    }
}
