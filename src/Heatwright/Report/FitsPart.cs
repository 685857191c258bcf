using Heatwright.Jobs;
using Heatwright.Trials;

namespace Heatwright.Report;

/// <summary>Fits: readings, the curve through them, and what it leaves over.</summary>
internal static class FitsPart
{
    public static Html Of(StudyResult result)
    {
        var tried = result.Findings.Where(found => found.Pictures.Count > 0).ToArray();
        return Html.If(tried.Length > 0, () => Html.Of($"""
            <section class="piece" id="fits"><header><h2>Fits</h2><span class="aside">discs: readings; line: the fit; band: where that line lies, 95 of 100; below, what the fit leaves over</span></header>
            {Html.Each(tried, found => Html.Of($"""
                <h3 class="of-part">{result.Shelf[found.Part].Name}</h3><div class="fits">{Html.Each(found.Pictures, One)}</div>

                """))}</section>

            """));
    }

    /// <summary>Readings and fit of every part that was tried, with a caption each.</summary>
    public static IEnumerable<Placed> All(StudyResult result) => result.Findings.SelectMany(found => found.Pictures.Select((picture, i) =>
        new Placed(Drawn(picture) with { Title = Called(found, picture, i, result.Shelf[found.Part].Name) }, $"Discs: readings of {picture.YName}{(picture.IsFitted ? "; line: the fit" : "")}.", Html.None)));

    /// <summary>Several runs of one trial are told apart by their number.</summary>
    private static string Called(PartFindings found, FitPicture picture, int at, string part)
    {
        int of = found.Pictures.Count(one => one.Title == picture.Title), number = 1 + found.Pictures.Take(at).Count(one => one.Title == picture.Title);
        string title = picture.Title.Contains(part, StringComparison.Ordinal) ? picture.Title : $"{part}: {picture.Title}";
        return of == 1 ? title : FormattableString.Invariant($"{title}, run {number} of {of}");
    }

    private static Figure Drawn(FitPicture picture)
    {
        var across = new FigureAxis(picture.XName, picture.XUnit);
        var read = new FigureCurve("read", picture.X, picture.Read, 1) { Form = FigureForm.Readings };
        List<FigureCurve> curves = [read];
        if (picture.IsFitted)
        {
            var (x, y) = picture.Curve();
            curves.Add(new FigureCurve("fit", x, y, 2));
        }

        return new Figure(picture.Title, $"{picture.Title}: {picture.Read.Length.ToString(System.Globalization.CultureInfo.InvariantCulture)} readings of {picture.YName} against {picture.XName}.", across, new(picture.YName, picture.YUnit), curves) { HeightPx = 240, Bands = picture.Band() is var (bandX, low, high) ? [new(bandX, low, high, 2)] : [] };
    }

    private static Html One(FitPicture picture)
    {
        var across = new FigureAxis(picture.XName, picture.XUnit);
        var behind = PicturePart.Table(across.Title, picture.X, picture.IsFitted ? [("read", picture.Read), ("fit", picture.Fitted)] : [("read", picture.Read)], "0.####");
        return Html.Of($"""<div class="fit">{PicturePart.Of(Drawn(picture), "", behind, half: true)}{Html.If(picture.IsFitted, () => LeftOver(picture, across))}</div>""");
    }

    private static Html LeftOver(FitPicture picture, FigureAxis across)
    {
        double[] left = [.. picture.Read.Zip(picture.Fitted, (read, fitted) => read - fitted)];
        var figure = new Figure("Left over", $"{picture.Title}: readings minus fit.", across, new("read − fit", picture.YUnit), [new FigureCurve("left over", picture.X, left, 1) { Form = FigureForm.Readings }])
        {
            HeightPx = 160,
            Limits = [new FigureLimit("", 0)],
        };
        return PicturePart.Of(figure, "", Html.None, half: true);
    }
}
