using Heatwright.Jobs;
using Heatwright.StudyFile;

namespace Heatwright.Cli.Answering;

/// <summary>A part that was entered.</summary>
/// <param name="Part">As it stands now.</param>
/// <param name="NotConfirmed">Claims of the seller's text that were not taken.</param>
internal sealed record PartEnteredView(PartView Part, IReadOnlyList<ClaimView> NotConfirmed);

/// <summary>A photo that was kept.</summary>
/// <param name="Id">Its name in the study.</param>
/// <param name="Part">The part it shows.</param>
/// <param name="Bytes">Its size, bytes.</param>
/// <param name="Note">The maker's note.</param>
internal sealed record PhotoKeptView(string Id, string Part, int Bytes, string Note);

/// <summary>The parts that are left on the shelf of a study.</summary>
/// <param name="Parts">Their short names.</param>
internal sealed record PartsLeftView(IReadOnlyList<string> Parts);

/// <summary>A part that was carried between a study and the maker's own shelf.</summary>
/// <param name="Part">Its short name.</param>
/// <param name="Was">How both stood to each other before, in words.</param>
/// <param name="Changed">False: both were the same already.</param>
/// <param name="Differences">In what they differed.</param>
/// <param name="Renamed">Names that were taken, and what they are now.</param>
internal sealed record CarriedView(string Part, string Was, bool Changed, IReadOnlyList<PartDifference> Differences, IReadOnlyList<string> Renamed);

/// <summary>What is on the maker's own shelf.</summary>
/// <param name="Parts">Short names of the parts.</param>
/// <param name="Meters">Names of the meters.</param>
/// <param name="Own">Money, resistors, prices and constants.</param>
internal sealed record OwnShelfView(IReadOnlyList<string> Parts, IReadOnlyList<string> Meters, OwnThings Own);

/// <summary>A part of a study beside that of the shelf.</summary>
/// <param name="Here">Its short name in the study; absent: it is not there.</param>
/// <param name="There">Its short name on the shelf; absent: it is not there.</param>
/// <param name="Stands">Which is newer, in words.</param>
/// <param name="Differences">In what they differ.</param>
internal sealed record ShelfPairView(string? Here, string? There, string Stands, IReadOnlyList<PartDifference> Differences);

/// <summary>A number that a build sheet takes.</summary>
/// <param name="Name">Its name, for --set.</param>
/// <param name="Value">What it usually is, with its unit.</param>
/// <param name="Why">Why.</param>
internal sealed record SheetNumberView(string Name, string Value, string Why);
