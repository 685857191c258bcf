using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs;

/// <summary>One thing in which a part here differs from the same part there.</summary>
/// <param name="What">In what they differ.</param>
/// <param name="Here">As it is in the study.</param>
/// <param name="There">As it is on the shelf.</param>
public sealed record PartDifference(string What, string Here, string There);

/// <summary>What a part is, with its trials and the meters they were read on, whatever it is called and in which file it lies.</summary>
public static class PartState
{
    /// <summary>Fingerprint of a part with its trials: names of part, trials and runs are left aside, they may differ from file to file.</summary>
    public static string Of(Study study, PartId id)
    {
        var part = study.Parts.First(one => one.Id == id);
        var meters = study.Instruments.ToDictionary(one => one.Id, StringComparer.Ordinal);
        var text = new StringBuilder(Json(part with { Id = new(""), Whence = null, Like = null, Words = new SortedDictionary<string, string>(part.Words.ToDictionary(StringComparer.Ordinal), StringComparer.Ordinal) }));
        foreach (var trial in study.Trials.Where(trial => trial.Part == id))
        {
            text.Append('\u001e').Append(Json(trial with { Id = new(""), Part = new(""), Runs = [.. trial.Runs.Select(run => Nameless(run, meters))] }));
        }

        foreach (string sha in Kept(study, id).Select(file => file.Sha256).Order(StringComparer.Ordinal))
        {
            text.Append('\u001d').Append(sha);
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }

    /// <summary>In what a part here differs from the same part there.</summary>
    public static IReadOnlyList<PartDifference> Differences(Study here, PartId idHere, Study there, PartId idThere)
    {
        var (own, other) = (here.Parts.First(one => one.Id == idHere), there.Parts.First(one => one.Id == idThere));
        List<PartDifference> found = [];
        Add("kind", EnterPart.Typed(own.Kind), EnterPart.Typed(other.Kind));
        Add("name", own.Name, other.Name);
        Add("on hand", Number(own.Count), Number(other.Count));
        Add("from", own.From, other.From);
        Add("note", own.Note, other.Note);
        Add("words", Words(own), Words(other));
        Add("seller's text", own.Listing is null ? "none" : $"{Number(own.Listing.Length)} characters", other.Listing is null ? "none" : $"{Number(other.Listing.Length)} characters");
        Add("photos and files", Files(here, idHere), Files(there, idThere));
        Add("pieces", Samples(own), Samples(other));
        foreach (string key in own.Stated.Concat(other.Stated).Select(Key).Distinct())
        {
            Add(key, Value(own, key), Value(other, key));
        }

        foreach (var kind in Enum.GetValues<TrialKind>())
        {
            Add($"{kind.ToString().ToLowerInvariant()} trials", Trials(here, idHere, kind), Trials(there, idThere, kind));
        }

        return found;

        void Add(string what, string mine, string theirs)
        {
            if (mine != theirs)
            {
                found.Add(new(what, mine, theirs));
            }
        }
    }

    private static Run Nameless(Run run, Dictionary<string, Instrument> meters) => run with
    {
        Id = new(""),
        Settings = new SortedDictionary<string, double>(run.Settings.ToDictionary(StringComparer.Ordinal), StringComparer.Ordinal),
        SettingsPlusMinus = new SortedDictionary<string, double>(run.SettingsPlusMinus.ToDictionary(StringComparer.Ordinal), StringComparer.Ordinal),
        // A meter may have another name there; what it may be wrong by is what counts.
        Columns = [.. run.Columns.Select(column => column with { Instrument = meters.TryGetValue(column.Instrument, out var meter) ? Json(meter with { Id = "" }) : "" })],
    };

    private static IEnumerable<KeptFile> Kept(Study study, PartId id) => study.Files.Where(file => file.About == KeptAbout.Part && file.Subject == id.Name);

    private static string Files(Study study, PartId id) => string.Join(", ", Kept(study, id).Select(file => $"{file.Name} ({file.Sha256[..6]})").Order(StringComparer.Ordinal)) is { Length: > 0 } said ? said : "none";

    private static string Key(StatedValue value) => $"{value.Quantity}, {value.Origin}{(value.Sample is { } piece ? $", piece {Number(piece)}" : "")}";

    private static string Value(Part part, string key) => string.Join("; ", part.Stated.Where(value => Key(value) == key).Select(value =>
        $"{Display.Significant(value.Value, 6)} {value.Unit}{(value.PlusMinus > 0 ? $" ± {Display.Significant(value.PlusMinus, 4)}" : "")}".TrimEnd() + (value.Text.Length > 0 ? $" ({value.Text})" : ""))) is { Length: > 0 } said ? said : "none";

    private static string Words(Part part) => part.Words.Count == 0 ? "none" : string.Join(", ", part.Words.OrderBy(word => word.Key, StringComparer.Ordinal).Select(word => $"{word.Key} {word.Value}"));

    private static string Samples(Part part) => part.Samples is { Count: > 0 } pieces ? string.Join(", ", pieces.Select(piece => $"{Number(piece.Number)} {piece.State}")) : "none told apart";

    private static string Trials(Study study, PartId id, TrialKind kind)
    {
        Run[] runs = [.. study.Trials.Where(trial => trial.Part == id && trial.Kind == kind).SelectMany(trial => trial.Runs)];
        return runs.Length == 0 ? "none" : $"{Number(runs.Length)} run{(runs.Length == 1 ? "" : "s")}, {Number(runs.Sum(run => run.Readings.Count))} readings, {Number(runs.Sum(run => run.Readings.Count(reading => reading.StruckBecause is not null)))} struck out";
    }

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, StudyJson.Options);

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);
}
