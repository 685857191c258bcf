using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>One frozen number of a decision.</summary>
/// <param name="Requirement">Id of the line.</param>
/// <param name="Text">The promise as it stood.</param>
/// <param name="Word">The verdict on it.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="Limit">The limit as it stood.</param>
/// <param name="Value">Predicted value in <paramref name="Unit"/>; null: never reached, or not known.</param>
/// <param name="StandardDoubt">Its standard doubt.</param>
/// <param name="Probability">That it is kept; null: not known.</param>
public sealed record FrozenLine(string Requirement, string Text, VerdictWord Word, string Unit, double Limit, double? Value = null, double? StandardDoubt = null, double? Probability = null);

/// <summary>An arrangement that was not chosen.</summary>
public sealed record Rejected(ArrangementId Arrangement, string Name, VerdictWord Word, string Because);

/// <summary>A missed requirement that the maker accepts, with the reason.</summary>
/// <param name="Requirement">Short name of the line that is missed.</param>
/// <param name="Reason">Why that is acceptable.</param>
public sealed record Accepted(string Requirement, string Reason);

/// <summary>The dated, frozen choice. Later findings may contradict it; they never rewrite it.</summary>
/// <param name="Id">Unique in the study.</param>
/// <param name="On">Date, year-month-day.</param>
/// <param name="State">Fingerprint of the study when it was made.</param>
/// <param name="Chosen">Which arrangement.</param>
/// <param name="Name">Its name then.</param>
/// <param name="Word">Its verdict then.</param>
/// <param name="Because">The maker's reason.</param>
/// <param name="FirstLine">Hard safety limits that are not met, carried on the first line of all that follows; empty: all are met.</param>
/// <param name="Lines">The numbers, frozen.</param>
/// <param name="Rejected">What was not chosen.</param>
/// <param name="Accepted">Missed requirements and why they are accepted.</param>
/// <param name="WouldChangeOurMind">Values at which a must of the chosen one flips.</param>
/// <param name="OpenRisks">The conditions of a go-if as the verdict says them, and cautions.</param>
/// <param name="NotTested">Numbers that rest on claims or guesses.</param>
/// <param name="BriefThen">The brief as it stood before.</param>
public sealed record DecisionCard(
    string Id, string On, string State, ArrangementId Chosen, string Name, VerdictWord Word, string Because, string FirstLine, IReadOnlyList<FrozenLine> Lines, IReadOnlyList<Rejected> Rejected,
    IReadOnlyList<Accepted> Accepted, IReadOnlyList<string> WouldChangeOurMind, IReadOnlyList<string> OpenRisks, IReadOnlyList<string> NotTested, Brief BriefThen);
