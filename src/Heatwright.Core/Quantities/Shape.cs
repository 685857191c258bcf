namespace Heatwright.Quantities;

/// <summary>How a doubt is spread. Every shape is scaled so that its unit draw has mean 0 and standard deviation 1.</summary>
public abstract record Shape
{
    private Shape() { }

    /// <summary>Bell-shaped.</summary>
    public sealed record Normal : Shape;

    /// <summary>Anything between two limits is as likely as any other; standard deviation = half width / √3.</summary>
    public sealed record Rectangular : Shape;

    /// <summary>Likeliest in the middle, straight down to the limits; standard deviation = half width / √6.</summary>
    public sealed record Triangular : Shape;

    /// <summary>Bell-shaped with heavier tails: a mean of few readings.</summary>
    /// <param name="DegreesOfFreedom">At least 3, so that a standard deviation exists.</param>
    public sealed record StudentT(int DegreesOfFreedom) : Shape
    {
        /// <summary>At least 3.</summary>
        public int DegreesOfFreedom { get; } = DegreesOfFreedom >= 3
            ? DegreesOfFreedom
            : throw new ArgumentOutOfRangeException(nameof(DegreesOfFreedom), DegreesOfFreedom, "A t spread needs at least 3 degrees of freedom.");
    }
}
