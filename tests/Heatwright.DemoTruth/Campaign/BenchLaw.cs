namespace Heatwright.DemoTruth.Campaign;

/// <summary>A bench test as it really is: true numbers, what every column would show without noise, and what the findings should be.</summary>
internal sealed class BenchLaw(string kind)
{
    private readonly List<double> numbers = [];
    private readonly List<Column> columns = [];
    private readonly List<Given> settings = [];
    private readonly List<(string Name, Func<double[], double> Of, Func<double[], double> ReadOff)> findings = [];

    private sealed record Column(string Name, Display? Display, double Hand, Func<double[], double[]> Of, string[] Words);

    private sealed record Given(string Name, Display? Display, double HalfWidth, Func<double[], double> Of);

    /// <summary>The word that the trial should answer.</summary>
    public string Word { get; set; } = "";

    /// <summary>A number that nobody knows beforehand.</summary>
    public int Unknown(double value)
    {
        numbers.Add(value);
        return numbers.Count - 1;
    }

    /// <summary>True value of an unknown.</summary>
    public double Number(int place) => numbers[place];

    /// <summary>Numbers that nobody knows beforehand: where each reading really was taken.</summary>
    public int[] Unknowns(IEnumerable<double> values) => [.. values.Select(Unknown)];

    /// <summary>A column that a display shows; hand: standard deviation of each reading beyond the display.</summary>
    public void Reads(string name, Display display, Func<double[], double[]> of, double hand = 0) => columns.Add(new(name, display, hand, of, []));

    /// <summary>A column that is exact.</summary>
    public void Notes(string name, double[] values) => columns.Add(new(name, null, 0, _ => values, []));

    /// <summary>A column of words.</summary>
    public void Says(string name, params string[] words) => columns.Add(new(name, null, 0, _ => [], words));

    /// <summary>A number of the whole run that somebody typed: it lies evenly within half a width of the truth.</summary>
    public void Sets(string name, double value, double halfWidth = 0) => settings.Add(new(name, null, halfWidth, _ => value));

    /// <summary>A number of the whole run that nobody knows but as far as its half-width.</summary>
    public void Sets(string name, Func<double[], double> of, double halfWidth) => settings.Add(new(name, null, halfWidth, of));

    /// <summary>A number of the whole run, read on a display.</summary>
    public void Sets(string name, Display display, Func<double[], double> of) => settings.Add(new(name, display, 0, of));

    /// <summary>A number that everybody knows to lie somewhere within half a width of the middle.</summary>
    public int Within(double middle, double halfWidth, Noise noise)
    {
        int place = Unknown(middle + noise.Within(halfWidth));
        settings.Add(new("", null, halfWidth, p => p[place]));
        return place;
    }

    /// <summary>What a finding should be.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="of">From the true numbers.</param>
    /// <param name="readOff">How somebody without a law would read it off, for the bound; as the true one where not said.</param>
    public void Finds(string name, Func<double[], double> of, Func<double[], double>? readOff = null) => findings.Add((name, of, readOff ?? of));

    /// <summary>The readings somebody would write down.</summary>
    /// <param name="noise">Draws.</param>
    /// <param name="wide">How many times as wide as promised the meters' errors are.</param>
    /// <param name="slips">Whether one reading of a long run may be a slip.</param>
    /// <param name="quiet">Whether hands and last digits are steady: only the display rounds.</param>
    public MadeUpTrial Taken(Noise noise, double wide, bool slips, bool quiet)
    {
        double[] truth = [.. numbers];
        var errors = Displays().ToDictionary(display => display.Name, _ => new[] { noise.Within(wide), noise.Within(wide), noise.Within(wide) }, StringComparer.Ordinal);
        double Shown(Display display, double value, double hand)
        {
            double[] e = errors[display.Name];
            double off = (display.Flicker * display.Step * noise.Bell()) + (hand * noise.Bell());
            double seen = display.Wrong(value, e[0], e[1], e[2]) + (quiet ? 0 : off);
            return Rounded(seen, display.Step);
        }

        List<MadeUpColumn> read = [];
        foreach (var column in columns)
        {
            double[] values = column.Of(truth);
            read.Add(column.Display is { } display
                ? new(column.Name, [.. values.Select(value => Shown(display, value, column.Hand))], [], display.Name, display.Promise)
                : new(column.Name, values, column.Words, "", ""));
        }

        if (slips && read.FindLast(column => column.Promise.Length > 0) is { Values.Length: >= 12 } last && noise.Even() < 0.2)
        {
            Slip(last.Values, noise);
        }

        MadeUpSetting[] said = [.. settings.Where(given => given.Name.Length > 0).Select(given => given.Display is { } display ? new MadeUpSetting(given.Name, Shown(display, given.Of(truth), 0), 0)
            : new(given.Name, given.Of(truth) + ((quiet ? 0 : 1) * noise.Within(given.HalfWidth)), given.HalfWidth))];
        var bound = new FullKnowledge(truth, Stacked, Spreads(), Limits());
        return new(kind, read, said, [.. findings.Select(finding => new MadeUpFinding(finding.Name, finding.Of(truth), bound.Half(finding.ReadOff, noise)))]) { Word = Word };
    }

    /// <summary>Bad luck: one number of the last display column is written down with its digits changed, ten times as large or with a clip half off.</summary>
    private static void Slip(double[] values, Noise noise)
    {
        int row = noise.Below(values.Length);
        values[row] *= noise.Even() < 0.5 ? 10 : 0.6;
    }

    private static double Rounded(double value, double step)
    {
        decimal d = (decimal)step;
        return (double)(Math.Round((decimal)value / d) * d);
    }

    private IEnumerable<Display> Displays() => columns.Select(column => column.Display).Concat(settings.Select(given => given.Display)).OfType<Display>().DistinctBy(display => display.Name);

    /// <summary>All that is shown, as a function of the unknown numbers and then of the errors inside their limits.</summary>
    private double[] Stacked(double[] x)
    {
        int count = numbers.Count;
        double[] p = x[..count];
        Dictionary<string, int> first = [];
        int next = count;
        foreach (var display in Displays())
        {
            first[display.Name] = next;
            next += 3;
        }

        double Wrong(Display display, double value) => first[display.Name] is var at ? display.Wrong(value, x[at], x[at + 1], x[at + 2]) : value;
        List<double> shown = [];
        foreach (var column in columns.Where(column => column.Display is not null))
        {
            shown.AddRange(column.Of(p).Select(value => Wrong(column.Display!, value)));
        }

        foreach (var given in settings.Where(given => given.Display is not null || given.HalfWidth > 0))
        {
            shown.Add(given.Display is { } display ? Wrong(display, given.Of(p)) : given.Of(p) + (given.HalfWidth * x[next++]));
        }

        return [.. shown];
    }

    private double[] Spreads()
    {
        List<double> spread = [];
        foreach (var column in columns.Where(column => column.Display is not null))
        {
            spread.AddRange(column.Of([.. numbers]).Select(_ => Math.Sqrt(Own(column.Display!) + (column.Hand * column.Hand))));
        }

        foreach (var given in settings.Where(given => given.Display is not null || given.HalfWidth > 0))
        {
            // A setting with a half-width is told exactly but for its error, which stands among the limited ones.
            spread.Add(given.Display is { } display ? Math.Sqrt(Own(display)) : 1e-3 * given.HalfWidth);
        }

        return [.. spread];
    }

    private static double Own(Display display) => display.Step * display.Step * ((1 / 12.0) + (display.Flicker * display.Flicker));

    /// <summary>How many errors that lie evenly inside their limits there are.</summary>
    private int Limits() => (3 * Displays().Count()) + settings.Count(given => given.Display is null && given.HalfWidth > 0);
}
