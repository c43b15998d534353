using EolSequencer.Model.Expressions;

namespace EolSequencer.Model.Traces;

/// <content>How fast it changes.</content>
public sealed partial record Curve
{
    /// <summary>The slope of the straight line through all readings by least squares, per second; to 12 significant digits.</summary>
    /// <exception cref="ExpressionFault">Fewer than two readings, or all at one moment.</exception>
    /// <remarks>Sums are taken about the means, so that large stamps and large numbers cost no digits.</remarks>
    public decimal Slope()
    {
        RequireWhole(2);
        var (meanTime, meanNumber) = (Points.Average(point => point.At / 1e6), Points.Average(point => (double)point.Number));
        var (squares, products) = (0.0, 0.0);
        foreach (var point in Points)
        {
            var time = (point.At / 1e6) - meanTime;
            squares += time * time;
            products += time * ((double)point.Number - meanNumber);
        }

        if (squares == 0) throw new ExpressionFault($"the readings of {Name} all came at one moment, which gives no slope");
        return ToTwelveDigits(products / squares, $"the slope of {Name}");
    }
}
