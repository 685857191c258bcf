using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs;

/// <summary>How a part of a study stands to the part of the shelf that it is or was taken from.</summary>
public enum Kinship
{
    /// <summary>Only on the shelf.</summary>
    OnlyThere,
    /// <summary>Only in the study.</summary>
    OnlyHere,
    /// <summary>The same in both.</summary>
    Same,
    /// <summary>Changed on the shelf since both were the same.</summary>
    NewerThere,
    /// <summary>Changed in the study since.</summary>
    NewerHere,
    /// <summary>Changed on both sides since.</summary>
    NewerBoth,
    /// <summary>Of one name, but never carried from one to the other.</summary>
    Unrelated,
}

/// <summary>A part in a study and on a shelf.</summary>
/// <param name="Here">Its name in the study; null: not there.</param>
/// <param name="There">Its name on the shelf; null: not there.</param>
/// <param name="Kinship">How they stand to each other.</param>
/// <param name="Differences">In what they differ.</param>
public sealed record PartPair(PartId? Here, PartId? There, Kinship Kinship, IReadOnlyList<PartDifference> Differences)
{
    /// <summary>The word for it.</summary>
    public string Word => Kinship switch
    {
        Kinship.OnlyThere => "only there",
        Kinship.OnlyHere => "only here",
        Kinship.Same => "same",
        Kinship.NewerThere => "newer there",
        Kinship.NewerHere => "newer here",
        Kinship.NewerBoth => "newer on both sides",
        _ => "another part of this name",
    };

    /// <summary>Every part of a study that is on the shelf too, or was taken from it.</summary>
    public static IReadOnlyList<PartPair> All(Study here, Study there) => [.. here.Parts
        .Where(part => part.Whence?.Study == there.Name || there.Parts.Any(other => other.Id == part.Id))
        .Select(part => Of(here, part.Id, there, part.Whence is { } whence && whence.Study == there.Name ? whence.Part : part.Id))];

    /// <summary>How two stand to each other.</summary>
    public static PartPair Of(Study here, PartId idHere, Study there, PartId idThere)
    {
        var own = here.Parts.FirstOrDefault(part => part.Id == idHere);
        bool hasOther = there.Parts.Any(part => part.Id == idThere);
        if (own is null || !hasOther)
        {
            return new(own?.Id, hasOther ? idThere : null, own is null ? Kinship.OnlyThere : Kinship.OnlyHere, []);
        }

        string mine = PartState.Of(here, idHere), theirs = PartState.Of(there, idThere);
        string? then = own.Whence is { } whence && whence.Study == there.Name && whence.Part == idThere ? whence.State : null;
        var kinship = mine == theirs ? Kinship.Same
            : then is null ? Kinship.Unrelated
            : mine == then ? Kinship.NewerThere : theirs == then ? Kinship.NewerHere : Kinship.NewerBoth;
        return new(idHere, idThere, kinship, kinship == Kinship.Same ? [] : PartState.Differences(here, idHere, there, idThere));
    }
}
