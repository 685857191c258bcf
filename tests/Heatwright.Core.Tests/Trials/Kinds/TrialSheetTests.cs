using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Sheets that are moved, cut and worked out again, and the errors that their readings share. Every expected value by hand.</summary>
public sealed class TrialSheetTests
{
    private static readonly TrialCard Card = SheetMakerTests.Card([new("x", "A", "x"), new("y", "V", "y")], new TrialSetting("leads", "V", "leads") { With = "y" }, new TrialSetting("air", "°C", "air"));

    private static TrialSheet Sheet(params SharedError[] shared) => new(Card, [3, 4, 7], new(StringComparer.Ordinal) { ["x"] = [1, 2, 3], ["y"] = [4, -9, double.NaN] }, new(StringComparer.Ordinal) { ["y"] = [0.1, 0.2, 0.3] },
        new(StringComparer.Ordinal) { ["mark"] = ["a", "b", "c"] }, new(StringComparer.Ordinal) { ["leads"] = (0.25, 0.01), ["air"] = (20, 0.5), ["unknown"] = (double.NaN, 0) }, shared);

    private static SharedError Error(string column, double gain, double offset, double both = 0) => new(Cause.Normal("m", CauseGroup.Instrument), column, gain, offset, both);

    /// <summary>1 % and 0.5 of 4 and −9, and 0.3 times the root of each with its sign: 4 + 0.04 + 0.5 + 0.6, −9 − 0.09 + 0.5 − 0.9; what was not read stays so. A setting read on the same meter moves too, 0.25 + 0.0025 + 0.5 + 0.15.</summary>
    [Fact]
    public void A_shared_error_moves_its_column_and_what_is_read_on_the_same_meter()
    {
        var moved = Sheet().Moved(Error("y", 0.01, 0.5, 0.3));
        Assert.Equal([5.14, -9.49, double.NaN], moved["y"].Select(value => Math.Round(value, 9)));
        Assert.Equal([1, 2, 3], moved["x"]);
        Assert.Equal(0.9025, moved.Setting("leads"), 1e-12);
        Assert.Equal((20, 0.01), (moved.Setting("air"), moved.SettingDoubt("leads")));

        // One that begins behind a cut moves the readings behind it, by their numbers, and no setting.
        var late = Sheet().Moved(Error("y", 0, 0.5) with { From = 4 });
        Assert.Equal([4, -8.5, double.NaN], late["y"]);
        Assert.Equal(0.25, late.Setting("leads"));

        // An error of a setting moves that alone.
        var setting = Sheet().Moved(Error("air", 0, 2));
        Assert.Equal((22, 0.25), (setting.Setting("air"), setting.Setting("leads")));
        Assert.Equal([4, -9, double.NaN], setting["y"]);
    }

    [Fact]
    public void What_is_not_there_is_no_number_no_word_and_no_doubt()
    {
        var sheet = Sheet();
        Assert.Equal([double.NaN, double.NaN, double.NaN], sheet["z"]);
        Assert.Equal(["", "", ""], sheet.Words("z"));
        Assert.Equal([0, 0, 0], sheet.Own("x"));
        Assert.Equal((true, false, 3), (sheet.Has("y"), sheet.Has("z"), sheet.Count));
        Assert.False(sheet.Rows([2]).Has("y"));
        Assert.Equal((0.25, 9.0, 9.0, 0.0), (sheet.Setting("leads", 9), sheet.Setting("unknown", 9), sheet.Setting("z", 9), sheet.SettingDoubt("z")));
        Assert.Equal(["air", "leads"], sheet.SettingNames.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Rows_take_words_and_doubts_along()
    {
        var sheet = Sheet().Without(1);
        Assert.Equal([3, 7], sheet.Numbers);
        Assert.Equal((["a", "c"], [0.1, 0.3]), (sheet.Words("mark"), sheet.Own("y")), (a, b) => a.Item1.SequenceEqual(b.Item1) && a.Item2.SequenceEqual(b.Item2));
        Assert.Equal([3, 4], Sheet().Whole("x", "y").Numbers);
        Assert.Equal([3, 4, 7], Sheet().Whole("x").Numbers);
        Assert.Equal(["once"], Sheet().Saying("once").Saying("once").Notes);
    }

    /// <summary>A column y·x that follows when y is moved, and one of that which follows in turn: (4 + 1)·1 and twice that.</summary>
    [Fact]
    public void A_column_worked_out_from_others_follows_them()
    {
        TrialSheet Product(TrialSheet s) => s.With("product", [.. s["x"].Zip(s["y"], (a, b) => a * b)], new double[s.Count]);
        TrialSheet Twice(TrialSheet s) => s.With("twice", [.. s["product"].Select(value => 2 * value)], new double[s.Count]);
        var first = Product(Sheet());
        var sheet = Twice(first.Derived("product", first["product"], [0, 0, 0], Product)).Derived("twice", [8, -36, double.NaN], [0, 0, 0], Twice);
        var moved = sheet.Moved(Error("y", 0, 1));
        Assert.Equal([5, -16, double.NaN], moved["product"]);
        Assert.Equal([10, -32, double.NaN], moved["twice"]);
        Assert.Equal([10, -32], moved.Without(2)["twice"]);
        Assert.Equal([20, -128], moved.Without(2).With("y", [10, -32], [0, 0]).Redone()["twice"]);
    }

    /// <summary>A line through nothing at x = 1 to 8 with 0.1 of its own at each and a zero z = 0.5 that all share: V = u²·I + z²·1·1ᵀ. By Sherman and Morrison b = xᵀV⁻¹y/xᵀV⁻¹x, 1/xᵀV⁻¹x its variance, yᵀV⁻¹y − b²·xᵀV⁻¹x what is left over.</summary>
    [Fact]
    public void A_law_is_judged_by_what_it_leaves_over_once_shared_errors_had_their_say()
    {
        double[] x = [1, 2, 3, 4, 5, 6, 7, 8], y = [.. x.Select((value, i) => 0.6 + (2 * value) + (i % 4 is 0 or 3 ? 0.1 : -0.1))];
        double u = 0.1, z = 0.5, k = z * z / ((u * u) + (8 * z * z));
        double Form(double[] a, double[] b) => (a.Zip(b, (p, q) => p * q).Sum() - (k * a.Sum() * b.Sum())) / (u * u);
        var model = Curves.Through("through nothing", "y", "x", Curves.Tell("slope", Units.Ohm, 0));
        var sheet = BenchFitTests.Sheet(x, y, u, 0, 1, new SharedError(Cause.Normal("zero", CauseGroup.Instrument), "y", 0, z));
        var solved = BenchFit.Solve(model, sheet);
        var judged = SharedFit.Judged(sheet, solved);
        double slope = Form(x, y) / Form(x, x), left = Form(y, y) - (slope * slope * Form(x, x));
        Assert.Equal(slope, judged.P[0], 1e-5);
        Assert.Equal(left, judged.Rss, 1e-3 * left);
        Assert.Equal(1 / Form(x, x), judged.Covariance[0, 0], 1e-3 / Form(x, x));
        Assert.True(judged.Rss < solved.Rss / 2);
        Assert.Equal(left, BenchFit.Run(sheet, model, Curves.Line("line", "y", "x")).Tried[0].Rss, 1e-3 * left);

        // Found as told, with the zero's own push: nothing of a slope through nothing is free of it.
        var told = BenchFit.Run(sheet, model).Find("slope")!;
        Assert.Equal(slope, told.Value, 1e-5);
        Assert.Equal(Math.Sqrt(1 / Form(x, x)), told.StandardDoubt, 0.01 * told.StandardDoubt);
        Assert.NotEqual(0, told.Doubts.By(Cause.Normal("zero", CauseGroup.Instrument)));

        // Without shared errors it is judged as it was solved.
        var bare = BenchFitTests.Sheet(x, y, u);
        var same = BenchFit.Solve(model, bare);
        Assert.Same(same, SharedFit.Judged(bare, same));
    }

    /// <summary>Two columns on one meter are moved together: volts and drop g more each leave their ratio alone.</summary>
    [Fact]
    public void One_error_moves_all_columns_that_it_acts_on()
    {
        var cause = Cause.Normal("m", CauseGroup.Instrument);
        var sheet = Sheet(new SharedError(cause, "x", 0.1, 0), new SharedError(cause, "y", 0.1, 0), new SharedError(Cause.Normal("other", CauseGroup.Instrument), "y", 0, 5));
        Assert.Equal(["m", "other"], SharedFit.Causes(sheet).Select(each => each.Id));
        var moved = SharedFit.Moved(sheet, cause);
        Assert.Equal([1.1, 2.2, 3.3], moved["x"].Select(value => Math.Round(value, 9)));
        Assert.Equal([4.4, -9.9, double.NaN], moved["y"].Select(value => Math.Round(value, 9)));
    }
}
