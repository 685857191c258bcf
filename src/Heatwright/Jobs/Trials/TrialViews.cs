using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>A finding as JSON says it.</summary>
public sealed record FindingView(string Name, double Value, string Unit, double StandardDoubt, string Origin)
{
    /// <summary>The part of the doubt that is scatter of the readings.</summary>
    public double ScatterDoubt { get; init; }

    /// <summary>Degrees of freedom behind the scatter; null: the readings' doubts were known.</summary>
    public double? DegreesOfFreedom { get; init; }

    /// <summary>Limits that hold in 95 of 100.</summary>
    public double Low95 { get; init; }

    /// <summary>Limits that hold in 95 of 100.</summary>
    public double High95 { get; init; }

    /// <summary>Limits that hold in 50 of 100.</summary>
    public double Low50 { get; init; }

    /// <summary>Limits that hold in 50 of 100.</summary>
    public double High50 { get; init; }

    /// <summary>Standard doubt by cause, largest first.</summary>
    public IReadOnlyList<CauseView> Causes { get; init; } = [];

    /// <summary>A finding as JSON says it.</summary>
    public static FindingView Of(TrialFinding finding)
    {
        var wide = finding.Middle(0.95);
        var half = finding.Middle(0.5);
        return new(finding.Name, finding.Value.Value, finding.Value.Unit.Symbol, finding.Value.StandardDoubt, finding.Value.Origin.Word)
        {
            ScatterDoubt = finding.ScatterDoubt,
            DegreesOfFreedom = double.IsFinite(finding.Degrees) ? finding.Degrees : null,
            Low95 = wide.Low,
            High95 = wide.High,
            Low50 = half.Low,
            High50 = half.High,
            Causes = [.. finding.Value.Doubts.Pushes.OrderByDescending(push => Math.Abs(push.By)).Select(push => new CauseView(push.Cause.Id, push.By))],
        };
    }
}

/// <summary>One cause and what it pushes.</summary>
/// <param name="Cause">What makes the value doubtful.</param>
/// <param name="By">How far it pushes the value, one standard doubt, signed, in the unit of the value.</param>
public sealed record CauseView(string Cause, double By);

/// <summary>An answer of a trial as JSON says it.</summary>
/// <param name="Kind">Kind of bench test.</param>
/// <param name="Answer">What the readings sufficed for, in a word.</param>
/// <param name="Findings">What was found.</param>
/// <param name="Covariance">Covariance of the findings, in their order and units; null: not known.</param>
/// <param name="Says">What it means, in sentences.</param>
public sealed record TrialView(string Kind, string Answer, IReadOnlyList<FindingView> Findings, double?[][] Covariance, IReadOnlyList<string> Says)
{
    /// <summary>Remarks on readings.</summary>
    public IReadOnlyList<TrialRemark> Remarks { get; init; } = [];

    /// <summary>Models tried.</summary>
    public IReadOnlyList<TriedView> Models { get; init; } = [];

    /// <summary>What to read next.</summary>
    public IReadOnlyList<string> Next { get; init; } = [];

    /// <summary>What was assumed and corrected.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Readings, curve, residuals, band.</summary>
    public TrialPicture? Picture { get; init; }

    /// <summary>An answer of a trial as JSON says it.</summary>
    public static TrialView Of(TrialAnswer answer)
    {
        double[,] covariance = answer.Covariance();
        return new(answer.Kind, answer.Word, [.. answer.Findings.Select(FindingView.Of)],
            [.. Enumerable.Range(0, covariance.GetLength(0)).Select(i => Enumerable.Range(0, covariance.GetLength(1)).Select(j => Finite(covariance[i, j])).ToArray())], answer.Says)
        {
            Remarks = answer.Remarks,
            Models = [.. answer.Tried.Select(tried => new TriedView(tried.Name, tried.Parameters, Finite(tried.Rss), Finite(tried.Spread), Finite(tried.Aicc), Finite(tried.RunsZ), Finite(tried.P), tried.Chosen, tried.Why))],
            Next = answer.Next,
            Notes = answer.Notes,
            Picture = answer.Picture is { } picture && picture.X.Concat(picture.Read).Concat(picture.Fitted).Concat(picture.Band).All(double.IsFinite) ? picture : null,
        };
    }

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}

/// <summary>A model that was tried, as JSON says it.</summary>
/// <param name="Parameters">How many numbers it has.</param>
/// <param name="Rss">Sum of squared residuals over the doubts of the readings; absent: not known.</param>
/// <param name="Spread">Root mean square of what it leaves over, in the unit of the readings; absent: not known.</param>
/// <param name="Aicc">Criterion of the choice; smaller is better; absent: not known.</param>
/// <param name="RunsZ">Changes of sign among the residuals; below −2: too few; absent: not known.</param>
/// <param name="P">Chance that the gain over the simpler model is luck, 0 to 1; absent: not known.</param>
/// <param name="Chosen">True: the findings come from it.</param>
/// <param name="Why">Why it was chosen or not.</param>
public sealed record TriedView(string Name, int Parameters, double? Rss, double? Spread, double? Aicc, double? RunsZ, double? P, bool Chosen, string Why);

/// <summary>Values to expect from what the seller claims, worked out.</summary>
/// <param name="Say">What.</param>
public sealed record ExpectView(string Say, double Value, string Unit);

/// <summary>A recipe with what the claim lets expect.</summary>
/// <param name="Kind">Name to type.</param>
/// <param name="About">What it is done on.</param>
/// <param name="Purpose">What it tells.</param>
/// <param name="Columns">What is read.</param>
/// <param name="Settings">What holds for the whole run.</param>
/// <param name="Recipe">How it is done.</param>
/// <param name="Expected">What to expect from the claim.</param>
/// <param name="Checks">Names of the checks that look at its readings.</param>
public sealed record RecipeView(string Kind, string About, string Purpose, IReadOnlyList<TrialColumn> Columns, IReadOnlyList<TrialSetting> Settings, TrialRecipe Recipe, IReadOnlyList<ExpectView> Expected, IReadOnlyList<string> Checks)
{
    /// <summary>A recipe; settings that are known fill in the values to expect.</summary>
    public static RecipeView Of(TrialCard card, IReadOnlyDictionary<string, double> known) => new(card.Name, card.About, card.Purpose, card.Columns, card.Settings, card.Recipe,
        [.. Expectations.Of(card, known).Select(value => new ExpectView(value.Say, value.Value, value.Unit))], [.. RuleBook.All.Where(rule => rule.Kinds.Contains(card.Name)).Select(rule => rule.Id)]);
}
