namespace Heatwright.DemoTruth;

/// <summary>A value as the maker wrote it down.</summary>
internal sealed record Said(string Quantity, double Value, string Unit, double PlusMinus, string Origin, string Text);

/// <summary>A part as the maker wrote it down.</summary>
internal sealed record DemoPart(string Id, string Kind, string Name, int Count, string From, Said[] Stated)
{
    public (string Key, string Value)[] Words { get; init; } = [];

    public string Note { get; init; } = "";
}
