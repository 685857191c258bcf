using Heatwright.StudyFile;

namespace Heatwright.Tests.StudyFile;

/// <summary>The last ten openings lie beside the study, and what did not change lies there once.</summary>
public class PastStatesTests
{
    [Fact]
    public void Ten_openings_are_kept_and_each_gives_the_study_as_it_stood()
    {
        using var desk = new Desk();
        string path = desk.At("a.study");
        byte[] photo = new byte[50_000];
        new Random(5).NextBytes(photo); // does not get smaller by packing
        StudyBook.Create(path, Studies.Band with { Files = [KeptFile.Of("p.jpg", "p.jpg", KeptAbout.Study, "", "", photo)] }, SetClock.Noon).Value.Dispose();
        for (int i = 1; i <= 13; i++)
        {
            using var book = StudyBook.Open(path, readOnly: false).Value;
            PastStates.Keep(book, path, SetClock.Noon);
            PastStates.Keep(book, path, SetClock.Noon); // as it was: not kept twice
            book.Write("note", book.Read() with { Note = $"note {i}" });
        }
        var kept = PastStates.List(path).Value;
        Assert.Equal(Enumerable.Range(4, 10).Select(i => (long)i), kept.Select(one => one.Number));
        var seventh = PastStates.Read(path, 7).Value;
        Assert.Equal("note 6", seventh.Note);
        Assert.Equal(Spelled.Out(Studies.Band with { Note = "note 6", Files = seventh.Files }), Spelled.Out(seventh));
        Assert.Equal(photo, seventh.Files[0].Content);
        // The photo once and ten small heads, not ten photos.
        Assert.InRange(new FileInfo(PastStates.Beside(path)).Length, 50_000, 150_000);
        Assert.Contains("4, 5, 6", Assert.Single(PastStates.Read(path, 3).Problems).Limit, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nothing_can_be_kept_the_study_is_opened_all_the_same()
    {
        using var desk = new Desk();
        using var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        Directory.CreateDirectory(PastStates.Beside(desk.At("a.study")));
        PastStates.Keep(book, desk.At("a.study"), SetClock.Noon);
        Assert.Equal(OpenFault.Missing, Assert.IsType<OpenProblem>(Assert.Single(PastStates.List(desk.At("a.study")).Problems)).Fault);
    }

    [Fact]
    public void A_damaged_file_of_openings_is_told_and_stops_nothing()
    {
        using var desk = new Desk();
        using var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        desk.Put("a.study.past", new string('x', 5000));
        PastStates.Keep(book, desk.At("a.study"), SetClock.Noon);
        Assert.Equal(OpenFault.Damaged, Assert.IsType<OpenProblem>(Assert.Single(PastStates.List(desk.At("a.study")).Problems)).Fault);
    }
}
