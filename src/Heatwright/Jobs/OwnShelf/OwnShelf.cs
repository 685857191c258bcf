using Heatwright.Jobs.Keeping;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs;

/// <summary>A part after it was carried from one file to another.</summary>
/// <param name="Pair">How it stood before.</param>
/// <param name="Changed">False: both were the same already.</param>
/// <param name="Renamed">Trials, runs and meters that had to take another name, as 'old is new'.</param>
public sealed record PartCarried(PartPair Pair, bool Changed, IReadOnlyList<string> Renamed);

/// <summary>The maker's own shelf: a study file that outlives the studies, from which parts are taken and to which they are given back. Nothing is linked: all is copied.</summary>
public static class OwnShelf
{
    /// <summary>Names the shelf's file where no option does.</summary>
    public const string Variable = "HEATWRIGHT_SHELF";

    private const string FileName = "shelf.study";

    /// <summary>The shelf's file: as given, as the environment says, or in the user's data folder.</summary>
    public static string Path(string? given)
    {
        if (given is { Length: > 0 })
        {
            return given;
        }

        return Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } said
            ? said
            : System.IO.Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "heatwright", FileName);
    }

    /// <summary>The shelf as it stands.</summary>
    public static Checked<OpenedStudy> Read(string path) => File.Exists(path) ? OpenStudy.Read(path) : new(new Problem(
        "There is no own shelf yet.", path, "no file", "a study file that is your shelf", "Give it its first part with 'heatwright give FILE PART', or name another with --shelf."));

    /// <summary>Makes the shelf where it is absent.</summary>
    public static Checked<string> Made(string path)
    {
        if (File.Exists(path))
        {
            return new(path);
        }

        try
        {
            if (System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path)) is { Length: > 0 } folder)
            {
                Directory.CreateDirectory(folder);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The folder of the shelf cannot be made.", path, error.Message, "a folder that may be written to", "Name another place with --shelf."));
        }

        return StudyBook.Create(path, new Study("own shelf", 1), TimeProvider.System).Map(book =>
        {
            book.Dispose();
            return path;
        });
    }

    /// <summary>How each part of a study stands to the shelf.</summary>
    public static Checked<IReadOnlyList<PartPair>> Compare(string study, string shelf) =>
        OpenStudy.Read(study).Then(here => Read(shelf).Map(there => PartPair.All(here.Study, there.Study)));

    /// <summary>Copies a part with pieces, trials and meters from the shelf into a study; the study remembers whence.</summary>
    /// <param name="study">The study file.</param>
    /// <param name="shelf">The shelf's file.</param>
    /// <param name="part">Its name on the shelf.</param>
    /// <param name="called">Its name in the study; null: the same.</param>
    /// <param name="over">True: also over what was changed here; the history keeps it.</param>
    public static Checked<PartCarried> Take(string study, string shelf, string part, string? called, bool over) => Read(shelf).Then(there => EnterPart.Found(there.Study, part).Then(own => KeepPhoto.WithContent(shelf, there.Study, own.Id).Then(source =>
    {
        PartCarried? carried = null;
        return ChangeStudy.Run(study, $"part {part} taken from the shelf", here =>
        {
            var id = new PartId(called ?? here.Parts.FirstOrDefault(one => one.Whence is { } whence && whence.Study == there.Study.Name && whence.Part == own.Id)?.Id.Name ?? own.Id.Name);
            var pair = PartPair.Of(here, id, there.Study, own.Id);
            return Allowed(pair, pair.Kinship is Kinship.OnlyThere or Kinship.NewerThere or Kinship.Same, over, id, $"'heatwright give {study} {id}' carries it the other way").Map(_ =>
            {
                var (next, renamed) = Carry(source, own.Id, here, id, new Whence(there.Study.Name, own.Id, PartState.Of(there.Study, own.Id)));
                carried = new(pair, pair.Kinship != Kinship.Same, renamed);
                return next;
            });
        }).Map(_ => carried!);
    })));

    /// <summary>Copies a part with all that was learnt of it from a study to the shelf; the study remembers that both were the same.</summary>
    /// <param name="study">The study file.</param>
    /// <param name="shelf">The shelf's file; made where it is absent.</param>
    /// <param name="part">Its name in the study.</param>
    /// <param name="called">Its name on the shelf; null: the one it was taken under, or the same.</param>
    /// <param name="over">True: also over what was changed on the shelf; the history keeps it.</param>
    public static Checked<PartCarried> Give(string study, string shelf, string part, string? called, bool over) => OpenStudy.Read(study).Then(here => EnterPart.Found(here.Study, part).Then(own => Made(shelf).Then(path => KeepPhoto.WithContent(study, here.Study, own.Id).Then(source =>
    {
        PartCarried? carried = null;
        PartId at = default;
        string name = "";
        return ChangeStudy.Run(path, $"part {part} given back from '{here.Study.Name}'", there =>
        {
            name = there.Name;
            at = new(called ?? (own.Whence is { } whence && whence.Study == there.Name ? whence.Part.Name : own.Id.Name));
            var pair = PartPair.Of(here.Study, own.Id, there, at);
            return Allowed(pair, pair.Kinship is Kinship.OnlyHere or Kinship.NewerHere or Kinship.Same, over, at, $"'heatwright take {study} {at}' carries it the other way").Map(_ =>
            {
                var (next, renamed) = pair.Kinship == Kinship.Same ? (there, []) : Carry(source, own.Id, there, at, null);
                carried = new(pair, pair.Kinship != Kinship.Same, renamed);
                return next;
            });
        }).Then(_ => ChangeStudy.Run(study, $"part {part} given to the shelf", now => new(now with
        {
            Parts = [.. now.Parts.Select(one => one.Id == own.Id ? one with { Whence = new(name, at, PartState.Of(here.Study, own.Id)) } : one)],
        }))).Map(_ => carried!);
    }))));

    private static Checked<bool> Allowed(PartPair pair, bool fine, bool over, PartId id, string way) => fine || over ? new(true) : new(new Problem(
        pair.Kinship == Kinship.Unrelated ? "There is another part of this name." : $"The part is {pair.Word}.", $"part '{id}'",
        string.Join("; ", pair.Differences.Take(4).Select(one => $"{one.What}: here {one.Here}, there {one.There}")) + (pair.Differences.Count > 4 ? $"; and {pair.Differences.Count - 4} more" : ""),
        "carried from where it is newer", $"{way}; --over writes over it all the same, and the history keeps what stood there{(pair.Kinship == Kinship.Unrelated ? "; --as gives it another name" : "")}."));

    private static (Study Study, IReadOnlyList<string> Renamed) Carry(Study from, PartId idFrom, Study into, PartId idInto, Whence? whence)
    {
        List<string> renamed = [];
        var own = from.Parts.First(one => one.Id == idFrom);
        var part = own with { Id = idInto, Whence = whence, Like = into.Parts.Any(one => one.Id == own.Like?.Part && one.Kind == own.Kind && one.Like is null && one.Id != idInto) ? own.Like : null };
        List<Instrument> meters = [.. into.Instruments];
        Dictionary<string, string> called = [];
        Trial[] others = [.. into.Trials.Where(trial => trial.Part != idInto)];
        HashSet<string> trials = new(others.Select(trial => trial.Id.Name), StringComparer.OrdinalIgnoreCase);
        HashSet<string> runs = new(others.SelectMany(trial => trial.Runs).Select(run => run.Id.Name), StringComparer.OrdinalIgnoreCase);
        Trial[] carried = [.. from.Trials.Where(trial => trial.Part == idFrom).Select(trial => trial with
        {
            Id = new(Free(trial.Id.Name, trials, "trial")),
            Part = idInto,
            Runs = [.. trial.Runs.Select(run => run with { Id = new(Free(run.Id.Name, runs, "run")), Columns = [.. run.Columns.Select(column => column with { Instrument = Meter(column.Instrument) })] })],
        })];
        bool known = into.Parts.Any(one => one.Id == idInto);
        return (into with
        {
            Instruments = meters,
            Parts = known ? [.. into.Parts.Select(one => one.Id == idInto ? part : one)] : [.. into.Parts, part],
            Trials = [.. others, .. carried],
            Files = Files(from, idFrom, into, idInto),
        }, renamed);

        string Free(string name, HashSet<string> taken, string what)
        {
            string free = name;
            for (int i = 2; !taken.Add(free); i++)
            {
                free = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{name}-{i}");
            }

            if (free != name)
            {
                renamed.Add($"{what} {name} is {free}");
            }

            return free;
        }

        string Meter(string id)
        {
            if (id.Length == 0 || called.TryGetValue(id, out string? name))
            {
                return id.Length == 0 ? "" : called[id];
            }

            var meter = from.Instruments.First(one => one.Id == id);
            var same = meters.FirstOrDefault(one => one.Id == id);
            if (same is not null && same.Specs.SequenceEqual(meter.Specs))
            {
                return called[id] = id;
            }

            name = Free(id, new HashSet<string>(meters.Select(one => one.Id), StringComparer.OrdinalIgnoreCase), "meter");
            meters.Add(meter with { Id = name });
            return called[id] = name;
        }
    }

    /// <summary>What is kept about the part comes along, byte for byte; files about other things stay as they are.</summary>
    private static KeptFile[] Files(Study from, PartId idFrom, Study into, PartId idInto)
    {
        var kept = into with { Files = [.. into.Files.Where(file => file.About != KeptAbout.Part || file.Subject != idInto.Name)] };
        foreach (var file in from.Files.Where(file => file.About == KeptAbout.Part && file.Subject == idFrom.Name))
        {
            string id = into.Files.FirstOrDefault(one => one.About == KeptAbout.Part && one.Subject == idInto.Name && one.Sha256 == file.Sha256)?.Id ?? KeepFiles.FreeId(kept, file.Name);
            kept = kept with { Files = [.. kept.Files, file with { Id = id, Subject = idInto.Name }] };
        }

        return [.. kept.Files];
    }
}
