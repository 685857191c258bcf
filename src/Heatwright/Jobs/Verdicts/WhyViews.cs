using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>What one requirement of an arrangement rests on and what would turn it.</summary>
/// <param name="Margin">Distance to the limit in the unit, positive where it is kept; absent: not known.</param>
/// <param name="WouldHaveToBeTrue">What would turn it.</param>
public sealed record WhyLine(string Requirement, string Text, string Verdict, double? Probability, double? Margin, string Unit, string Because, string Remedy, IReadOnlyList<string> WouldHaveToBeTrue);

/// <summary>Why an arrangement stands as it does.</summary>
/// <param name="Requirements">Each line of the brief.</param>
/// <param name="Claims">Numbers that only a seller's word holds up.</param>
/// <param name="Assumptions">Numbers that are guesses.</param>
/// <param name="Readings">How many numbers of the plant rest on readings.</param>
/// <param name="Conditions">What must be there for safety and is not yet.</param>
/// <param name="Matters">Where the doubt comes from; absent without --matters.</param>
public sealed record WhyView(
    string Letter, string Name, string Verdict, string Because, IReadOnlyList<WhyLine> Requirements, IReadOnlyList<string> Claims, IReadOnlyList<string> Assumptions, int Readings,
    IReadOnlyList<string> Conditions, IReadOnlyList<MattersView>? Matters);

/// <summary>What matters for one requirement, as machines read it; null: never.</summary>
/// <param name="Shares">Where the doubt comes from, largest share first.</param>
/// <param name="Tornado">What each input does to it by itself, longest bar first.</param>
public sealed record MattersView(string Requirement, IReadOnlyList<DoubtShareView> Shares, IReadOnlyList<TornadoView> Tornado)
{
    /// <summary>The view of what matters.</summary>
    public static MattersView Of(Matters matters) => new(matters.Requirement.Id, [.. matters.Shares.Select(share => new DoubtShareView(share.Source, WhyTool.GroupWord(share.Group), share.First, share.Total))],
        [.. matters.Tornado.Select(bar => new TornadoView(bar.Input, bar.LowInput, bar.HighInput, bar.Unit, double.IsFinite(bar.AtLow) ? bar.AtLow : null, double.IsFinite(bar.AtHigh) ? bar.AtHigh : null))]);
}

/// <summary>Share of doubt of one source.</summary>
/// <param name="Source">What is doubtful.</param>
/// <param name="Group">trial, instrument, claim or assumption.</param>
/// <param name="First">Share of the variance that it makes by itself, 0 to 1.</param>
/// <param name="Total">Share together with others, 0 to 1.</param>
public sealed record DoubtShareView(string Source, string Group, double First, double Total);

/// <summary>One bar.</summary>
/// <param name="Input">What is moved.</param>
/// <param name="LowInput">Its low value, in the unit.</param>
/// <param name="HighInput">Its high value, in the unit.</param>
/// <param name="Unit">Unit symbol of the input.</param>
/// <param name="AtLow">What the line then is, in its own unit; null: never.</param>
/// <param name="AtHigh">What the line then is, in its own unit; null: never.</param>
public sealed record TornadoView(string Input, double LowInput, double HighInput, string Unit, double? AtLow, double? AtHigh);

/// <summary>Explains one arrangement: mechanism, remedies by turning the prediction round, what it rests on.</summary>
public static class WhyTool
{
    /// <summary>Ways that are named for a requirement.</summary>
    private const int Ways = 4;

    /// <summary>The explanation, or why there is none.</summary>
    /// <param name="result">The study worked out.</param>
    /// <param name="letter">Letter or id of the arrangement.</param>
    /// <param name="draws">Draws for what matters; 0: not asked for.</param>
    public static Checked<WhyView> Of(StudyResult result, string letter, int draws)
    {
        var found = result.Verdicts.FirstOrDefault(one => string.Equals(one.Arrangement.Letter, letter, StringComparison.OrdinalIgnoreCase) || one.Arrangement.Id.Name == letter);
        if (found is null)
        {
            return new(new Problem("There is no such arrangement.", result.Study.Name, letter, string.Join(", ", result.Verdicts.Select(one => one.Arrangement.Letter)), "Choose one of them."));
        }

        var brief = result.Study.Brief!;
        var inputs = found.Prediction?.Builder.Inputs ?? [];
        return new(new WhyView(found.Arrangement.Letter, found.Arrangement.Name, ArrangementView.Word(found.Word), found.Because, [.. found.Requirements.Select(line => Line(found, line, brief))],
            [.. inputs.Where(input => input.Value.Origin.Weakest() is Origin.Claimed).Select(input => $"{input.Name}: {Display.Rounded(input.Value)}")],
            [.. inputs.Where(input => input.Value.Origin.Weakest() is Origin.Assumed).Select(input => $"{input.Name}: {Display.Rounded(input.Value)}")],
            inputs.Count(input => input.Value.Origin.Weakest() is Origin.Fitted or Origin.Measured), [.. found.Safety.Conditions.Select(condition => condition.Words)],
            draws > 0 && found.Prediction is { } prediction ? [.. WhatMatters.Of(brief, prediction, result.Study.Seed, draws).Select(MattersView.Of)] : null));
    }

    internal static string GroupWord(CauseGroup group) => group switch
    {
        CauseGroup.Trial => "trial",
        CauseGroup.Instrument => "instrument",
        CauseGroup.Claim => "claim",
        _ => "assumption",
    };

    private static WhyLine Line(ArrangementVerdict verdict, RequirementVerdict line, Brief brief)
    {
        var ways = line.Word != VerdictWord.Go && verdict.Prediction is { } prediction
            ? WouldHaveToBeTrue.Of(prediction.Builder, line.Requirement, Told.ByRun(line.Requirement, brief, verdict.Arrangement.Parallel)) : [];
        return new(line.Requirement.Id, line.Requirement.Text, ArrangementView.Word(line.Word), line.Probability, double.IsFinite(line.Margin) ? line.Margin : null, line.Requirement.Unit, line.Because, line.Remedy,
            [.. ways.Take(Ways).Select(way => way.Words)]);
    }
}
