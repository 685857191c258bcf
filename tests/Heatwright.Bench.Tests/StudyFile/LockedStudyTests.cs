using Heatwright.StudyFile;

namespace Heatwright.Tests.StudyFile;

/// <summary>Another program is played by a connection of SQLite's own. Each waits out the patience of five seconds.</summary>
public class LockedStudyTests
{
    [Fact]
    public void A_change_while_another_program_writes_is_told_and_can_be_made_afterwards()
    {
        using var desk = new Desk();
        using var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        var next = Studies.Band with { Note = "later" };
        using (var other = Raw.Open(desk.At("a.study")))
        {
            Raw.Run(other, "BEGIN IMMEDIATE");
            Assert.Equal(OpenFault.Locked, Assert.IsType<OpenProblem>(Assert.Single(book.Write("note", next).Problems)).Fault);
            Assert.Equal(Studies.Band.Note, book.Read().Note);
            Raw.Run(other, "ROLLBACK");
        }
        Assert.Empty(book.Write("note", next).Problems);
        Assert.Equal("later", book.Read().Note);
    }

    [Fact]
    public void A_study_that_another_program_holds_for_itself_is_told()
    {
        using var desk = new Desk();
        StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value.Dispose();
        using var other = Raw.Open(desk.At("a.study"));
        Raw.Run(other, "PRAGMA locking_mode = EXCLUSIVE; BEGIN EXCLUSIVE; COMMIT");
        Assert.Equal(OpenFault.Locked, Assert.IsType<OpenProblem>(Assert.Single(StudyBook.Open(desk.At("a.study"), readOnly: false).Problems)).Fault);
    }
}
