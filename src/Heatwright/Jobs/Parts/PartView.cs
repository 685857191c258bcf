using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs;

/// <summary>One value of a part: all that was stated of it and found, side by side.</summary>
/// <param name="Words">What was said with it.</param>
/// <param name="Sample">The piece that it is of; absent: all.</param>
/// <param name="IsBest">True: this one is reckoned with.</param>
public sealed record PartValueView(string Quantity, double Value, string Unit, double StandardDoubt, string Origin, string Words, int? Sample, bool IsBest);

/// <summary>What a part still lacks.</summary>
/// <param name="Essential">True: without it there is no prediction.</param>
/// <param name="How">How it is found out.</param>
public sealed record PartNeedView(string Quantity, bool Essential, string How);

/// <summary>A part as screens and machines get it.</summary>
/// <param name="Id">Its short name.</param>
/// <param name="Kind">Kind of part.</param>
/// <param name="Count">Pieces on hand; 0: to be bought.</param>
/// <param name="From">bought, salvaged, borrowed or destroyed.</param>
/// <param name="Words">Words that are no numbers, by name.</param>
/// <param name="Photo">Name of its picture; absent: none.</param>
/// <param name="Listing">The seller's text as it was pasted; absent: none.</param>
/// <param name="Samples">Its pieces, where they are told apart.</param>
/// <param name="Whence">Which shelf it was taken from; absent: none.</param>
/// <param name="Values">All that was stated of it and found, side by side.</param>
/// <param name="Missing">What it still lacks.</param>
/// <param name="Doubts">What its claims contradict.</param>
public sealed record PartView(
    string Id, string Kind, string Name, int Count, string From, IReadOnlyDictionary<string, string> Words, string Note, string? Photo, string? Listing, IReadOnlyList<PartSample>? Samples, Whence? Whence,
    IReadOnlyList<PartValueView> Values, IReadOnlyList<PartNeedView> Missing, IReadOnlyList<ClaimDoubt> Doubts)
{
    /// <summary>The view of a part with what its trials told.</summary>
    public static PartView Of(Part part, PartFindings? found)
    {
        List<PartValueView> values = [];
        foreach (var finding in found?.Findings ?? [])
        {
            values.Add(new(finding.Quantity, finding.Value.Value, finding.Value.Unit.Symbol, finding.Value.StandardDoubt, finding.Value.Origin.Word, "", null, ReferenceEquals(finding.Value, found!.Find(finding.Quantity))));
        }

        foreach (string quantity in part.Stated.Select(stated => stated.Quantity).Distinct())
        {
            var pieces = PartValues.OfSamples(part, quantity);
            if (pieces is not null)
            {
                values.Add(new(quantity, pieces.Value, pieces.Unit.Symbol, pieces.StandardDoubt, "measured", "any one of the pieces", null, found?.Find(quantity) is null));
            }

            var best = pieces is null && found?.Find(quantity) is null ? part.Stated.Where(stated => stated.Quantity == quantity).MaxBy(stated => PartValues.Trust(PartValues.Read(part, stated).Origin)) : null;
            values.AddRange(part.Stated.Where(stated => stated.Quantity == quantity).OrderByDescending(stated => PartValues.Trust(PartValues.Read(part, stated).Origin)).Select(stated =>
            {
                var estimate = PartValues.Read(part, stated);
                return new PartValueView(quantity, stated.Value, stated.Unit, estimate.StandardDoubt, stated.Origin, stated.Text, stated.Sample, ReferenceEquals(stated, best));
            }));
        }

        return new(part.Id.Name, EnterPart.Word(part.Kind), part.Name, part.Count, part.From, part.Words, part.Note, part.Photo, part.Listing, part.Samples, part.Whence,
            [.. values.GroupBy(value => value.Quantity).SelectMany(group => group)],
            [.. PartNeeds.Missing(part, quantity => found?.Find(quantity) is not null).Select(need => new PartNeedView(need.Quantity, need.IsEssential, need.How))], ClaimChecks.Of(part, quantity => found?.Find(quantity)));
    }

    /// <summary>All parts of a study, with what their trials told.</summary>
    public static IReadOnlyList<PartView> All(Study study)
    {
        var found = RunStudy.Findings(study).ToDictionary(one => one.Part);
        return [.. study.Parts.Select(part => Of(part, found.GetValueOrDefault(part.Id)))];
    }

    /// <summary>One part of a study.</summary>
    public static Checked<PartView> One(Study study, string id) => EnterPart.Found(study, id).Map(part => Of(part, RunStudy.Findings(study, part)));
}
