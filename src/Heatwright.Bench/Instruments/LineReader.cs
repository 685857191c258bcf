using Heatwright.Logs;

namespace Heatwright.Instruments;

/// <summary>Turns the lines of one instrument into readings: holds the first ones back until their form is known, and finds a new form when they change.</summary>
internal sealed class LineReader(string source, LogMapping? answers)
{
    /// <summary>A slow instrument is understood from what it said in this time.</summary>
    private const double PatienceS = 1.5;

    /// <summary>So many lines in a row that do not fit: the instrument speaks otherwise now.</summary>
    private const int Strangers = 6;

    /// <summary>A form that has read so many lines is trusted again.</summary>
    private const int Settled = 50;

    /// <summary>Where so many lines show no form there is none to find.</summary>
    private const int MostHeld = 200;

    /// <summary>Where many lines showed no form, so many go by at most, and for so long at most, before it is looked for again: a look costs far more than a line.</summary>
    private const int MostPassed = 1600;

    private const double LookAgainS = 5;

    private const string Before = "it came before the first reading";
    private const string Stranger = "it does not fit the others";

    private readonly List<RawLine> held = [];
    private LineFormat? format;
    private LogQuestion? asked;
    private int tryAt = 3;
    private int strangers = Strangers;
    private int fitted;
    private int toPass, passed;
    private double lookedS;
    private string noForm = "";
    private bool wordsFirst = true;

    /// <summary>Takes a line.</summary>
    public void Take(RawLine line, List<Heard> heard)
    {
        if (!line.Whole && held.Count == 0)
        {
            heard.Add(Left(line, ""));
            return;
        }

        if (line.Whole && format?.Read(line.Text) is { } readouts)
        {
            Release(heard, Stranger);
            (tryAt, fitted) = (3, fitted + 1);
            strangers = fitted >= Settled ? Strangers : strangers;
            heard.Add(new Heard.Line(source, line.AtS, line.Text, readouts));
            return;
        }

        held.Add(line);
        if (held.Count < (format is null ? tryAt : Math.Max(tryAt, strangers)))
        {
            return;
        }

        if (format is null && passed < toPass && line.AtS - lookedS < LookAgainS)
        {
            passed += held.Count;
            Release(heard, noForm);
            return;
        }

        Understand(line.AtS, heard);
    }

    /// <summary>Called when time has passed without a line.</summary>
    public void Pause(double nowS, List<Heard> heard)
    {
        if (held.Count > 0 && nowS - held[0].AtS >= PatienceS && asked is null)
        {
            Understand(nowS, heard);
        }
    }

    /// <summary>The connection is gone: what is held back is read as well as it can be.</summary>
    public void End(double nowS, List<Heard> heard)
    {
        if (held.Count > 0 && format is null)
        {
            Understand(nowS, heard);
        }

        Release(heard, "no readings were found in it");
        (tryAt, toPass, wordsFirst) = (3, 0, true);
    }

    /// <summary>Words before the first reading are what a board says when it starts.</summary>
    private void Release(List<Heard> heard, string why)
    {
        foreach (var line in held)
        {
            heard.Add(Left(line, wordsFirst ? Before : why));
        }

        held.Clear();
        wordsFirst = false;
    }

    private Heard.Unread Left(RawLine line, string why) => new(source, line.AtS, line.Text, line.Whole ? why : "it may be only a part of a line");

    private void Understand(double nowS, List<Heard> heard)
    {
        // A line that changes its form all the time is looked at ever more seldom: finding a form costs more than reading by one.
        // What it has read so far earns its form no trust for that, whether another one is found now or not.
        (strangers, fitted) = format is null ? (strangers, fitted) : (Math.Min(2 * strangers, MostHeld), 0);
        // Garbage and greetings at the start would hide the form of what follows: the later half is asked too.
        string[] whole = [.. held.Where(line => line.Whole).Select(line => line.Text)];
        var found = LineFormat.Find(whole, answers, out var question);
        if (found is null && whole.Length > 3)
        {
            found = LineFormat.Find([.. whole.TakeLast(Math.Max(2, whole.Length / 3))], answers, out question);
        }

        if (found is null || question is not null)
        {
            Undecided(question, nowS, heard);
            return;
        }

        (format, asked, fitted, toPass) = (found, null, 0, 0);
        heard.Add(new Heard.Note(source, nowS, LinkState.Understood, $"The lines hold {format.Words}."));
        RawLine[] lines = [.. held];
        held.Clear();
        bool any = false;
        foreach (var line in lines)
        {
            if (line.Whole && format.Read(line.Text) is { } readouts)
            {
                any = true;
                heard.Add(new Heard.Line(source, line.AtS, line.Text, readouts));
            }
            else
            {
                heard.Add(Left(line, any || !wordsFirst ? Stranger : Before));
            }
        }

        (tryAt, wordsFirst) = (3, false);
    }

    private void Undecided(LogQuestion? question, double nowS, List<Heard> heard)
    {
        if (question is not null && asked is null)
        {
            asked = question;
            heard.Add(new Heard.Note(source, nowS, LinkState.Question, $"{question.Text} {string.Join("; or ", question.Choices.Select(choice => choice.Text))}. Until that is said no reading is taken."));
        }

        tryAt = Math.Max(held.Count + 1, held.Count * 3 / 2);
        if (held.Count >= MostHeld)
        {
            noForm = question is null ? "no readings were found in it" : "its comma can be read in two ways";
            Release(heard, noForm);
            // So much without a form: it is looked for ever more seldom from now on, and whenever the instrument pauses.
            (tryAt, toPass, passed, lookedS) = (MostHeld, Math.Clamp(2 * toPass, MostHeld, MostPassed), 0, nowS);
        }
    }
}
