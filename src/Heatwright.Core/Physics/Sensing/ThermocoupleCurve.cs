using System.Globalization;

namespace Heatwright.Physics;

/// <summary>The published voltage function of one thermocouple type, and its exact inverse.</summary>
/// <remarks>Source: [nist-srd60], the same functions as [iec-60584-1]; the coefficients arrive as arguments. A definition: throws
/// outside its range. Checked: ThermocoupleTableTests (every printed degree), ThermocoupleCurveTests (round trips).</remarks>
public sealed class ThermocoupleCurve
{
    private readonly EmfPiece[] pieces;
    private readonly EmfInversePiece[] starts;

    /// <summary>A type from its published pieces.</summary>
    /// <param name="type">Letter of the type.</param>
    /// <param name="pieces">Pieces of the function, joined without gaps.</param>
    /// <param name="starts">Published approximate inverses; used as first guesses only.</param>
    /// <param name="invertFromC">Below this two temperatures give one voltage; NaN where the whole range can be inverted.</param>
    public ThermocoupleCurve(string type, IEnumerable<EmfPiece> pieces, IEnumerable<EmfInversePiece> starts, double invertFromC = double.NaN)
    {
        Type = type;
        this.pieces = [.. pieces.OrderBy(piece => piece.FromC)];
        this.starts = [.. starts.OrderBy(piece => piece.FromMv)];
        for (int i = 1; i < this.pieces.Length; i++)
        {
            if (this.pieces[i].FromC != this.pieces[i - 1].ToC)
            {
                throw new ArgumentException($"The pieces of type {type} leave a gap or overlap.", nameof(pieces));
            }
        }

        MinC = this.pieces[0].FromC;
        MaxC = this.pieces[^1].ToC;
        InvertFromC = double.IsNaN(invertFromC) ? MinC : invertFromC;
    }

    /// <summary>Letter of the type.</summary>
    public string Type { get; }

    /// <summary>Lowest temperature of the publication, °C.</summary>
    public double MinC { get; }

    /// <summary>Highest temperature of the publication, °C.</summary>
    public double MaxC { get; }

    /// <summary>From here up a voltage says one temperature, °C.</summary>
    public double InvertFromC { get; }

    /// <summary>The published approximate inverses with their stated error bands.</summary>
    public IReadOnlyList<EmfInversePiece> ApproximateInverses => starts;

    /// <summary>Voltage with the reference junction at 0 °C, V.</summary>
    public double EmfV(double hotC) => 1e-3 * PieceAt(hotC).EmfMv(hotC);

    /// <summary>Sensitivity dE/dt, V/K.</summary>
    public double SlopeVPerK(double hotC) => 1e-3 * PieceAt(hotC).SlopeMvPerK(hotC);

    /// <summary>Temperature that gives this voltage with the reference junction at 0 °C: the exact inverse, not the published approximation.</summary>
    public double TemperatureC(double emfV)
    {
        double low = InvertFromC, high = MaxC;
        double lowV = EmfV(low), highV = EmfV(high);
        // A voltage of the top of the range, sent through text or a sum of two, may sit a rounding above it.
        double slackV = 1e-15;
        if (!(emfV >= lowV - slackV && emfV <= highV + slackV))
        {
            throw new ArgumentOutOfRangeException(nameof(emfV), emfV, string.Create(CultureInfo.InvariantCulture,
                $"Type {Type} gives {lowV * 1e3:0.###} to {highV * 1e3:0.###} mV between {low:0.###} and {high:0.###} °C; {emfV * 1e3:0.####} mV lies outside."));
        }

        double guess = FirstGuessC(emfV, low, high);
        for (int step = 0; step < 200; step++)
        {
            var piece = PieceAt(guess);
            double missV = (1e-3 * piece.EmfMv(guess)) - emfV;
            if (missV == 0)
            {
                return guess;
            }

            (low, high) = missV > 0 ? (low, guess) : (guess, high);
            double next = guess - (missV / (1e-3 * piece.SlopeMvPerK(guess)));
            // Newton where it stays inside the bracket, halving where it would leave it: near -270 °C the slope almost vanishes.
            if (!(next > low && next < high))
            {
                next = 0.5 * (low + high);
            }

            if (Math.Abs(next - guess) <= 1e-12 * Math.Max(1, Math.Abs(guess)))
            {
                return next;
            }

            guess = next;
        }

        return guess;
    }

    private double FirstGuessC(double emfV, double low, double high)
    {
        foreach (var start in starts)
        {
            if (emfV * 1e3 >= start.FromMv && emfV * 1e3 <= start.ToMv)
            {
                return Math.Clamp(start.ApproximateC(emfV), low, high);
            }
        }

        return 0.5 * (low + high);
    }

    private EmfPiece PieceAt(double tC)
    {
        if (!(tC >= MinC && tC <= MaxC))
        {
            throw new ArgumentOutOfRangeException(nameof(tC), tC, string.Create(CultureInfo.InvariantCulture,
                $"Type {Type} is defined from {MinC:0.###} to {MaxC:0.###} °C; {tC:0.###} °C lies outside."));
        }

        for (int i = 0; i < pieces.Length - 1; i++)
        {
            if (tC <= pieces[i].ToC)
            {
                return pieces[i];
            }
        }

        return pieces[^1];
    }
}
