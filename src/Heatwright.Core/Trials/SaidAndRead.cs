using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>A value that somebody says of a part, beside what was read on it.</summary>
/// <param name="Quantity">What it is; by the name of a lower bound where what was read is one.</param>
/// <param name="Said">What is claimed, or stands on a data sheet.</param>
/// <param name="Read">What was found, in the unit of what is said.</param>
public sealed record SaidAndRead(string Quantity, Estimate Said, Estimate Read)
{
    /// <summary>True where what was read is a lower bound below what is said: it neither bears that out nor contradicts it.</summary>
    public bool IsOpen => LowerBound.Is(Quantity) && Read.Si <= Said.Si;

    /// <summary>True where both lie within twice their joint doubt, or what was read leaves open what is said.</summary>
    public bool Agrees => IsOpen || Math.Abs(Said.Si - Read.Si) <= 2 * Math.Sqrt((Said.SiDoubt * Said.SiDoubt) + (Read.SiDoubt * Read.SiDoubt));

    /// <summary>By how much what was read is off, of what is said: '−31%'.</summary>
    public string Off => ((Read.Si / Said.Si) - 1).ToString("+0%;−0%", CultureInfo.InvariantCulture);

    /// <summary>'agrees', 'open' or 'contradicted' and by how much.</summary>
    public string Words => IsOpen ? "open: a lower bound" : Agrees ? "agrees" : $"contradicted, {Off}";

    /// <summary>The two beside each other; null: they measure different things.</summary>
    public static SaidAndRead? Of(string quantity, Estimate said, Estimate read) =>
        said.Unit.Dimension == read.Unit.Dimension ? new(quantity, said, read.In(said.Unit)) : null;

    /// <summary>What was read, in the unit of what is said of it, so that the two can be compared at a glance; as it is where nothing of its kind is said.</summary>
    /// <param name="said">What is said; null: nothing.</param>
    /// <param name="read">What was read.</param>
    public static Estimate Alike(Estimate? said, Estimate read) => said is null ? read : Of("", said, read)?.Read ?? read;

    /// <summary>A label's watts beside those that the heater takes at the label's volts by the ohms that were found: its hot ohms where they are known. Null: the label says none, or no ohms were found.</summary>
    /// <param name="part">The heater.</param>
    /// <param name="find">A finding by its quantity.</param>
    public static SaidAndRead? LabelPower(Part part, Func<string, Estimate?> find)
    {
        ArgumentNullException.ThrowIfNull(part);
        Estimate? said(string quantity) => part.Stated.Where(stated => stated.Quantity == quantity && stated.Origin is "claimed" or "sheet").Select(stated => PartValues.Read(part, stated)).FirstOrDefault();
        return part.Kind == PartKind.Heater && said(PartQuantities.RatedVolts) is { Si: > 0 } volts && said(PartQuantities.RatedPower) is { Si: > 0 } watts && (find("hot ohms") ?? find(PartQuantities.Ohms)) is { Si: > 0 } ohms
            ? Of(PartQuantities.RatedPower, watts, Propagate.Through(r => volts.Si * volts.Si / r, Units.Watt, "label volts squared over the ohms found", new("ohms", ohms)))
            : null;
    }
}
