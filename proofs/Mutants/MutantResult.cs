namespace Heatwright.Proofs.Mutants;

/// <summary>What became of the changes of one folder.</summary>
/// <param name="Places">Changes that could be made there, those that do not compile among them.</param>
/// <param name="Sampled">How many were drawn.</param>
/// <param name="Killed">Noticed by a test.</param>
/// <param name="OfThemForEver">Of those, how many ran for ever or ended the process.</param>
/// <param name="Survived">Passed by fast tests, none of which noticed.</param>
/// <param name="NotReached">Passed by no test at all.</param>
/// <param name="OnlyByLongTests">Passed by long tests only: not run, not counted.</param>
/// <param name="KilledPercent">Killed, of all but those of the long tests.</param>
/// <param name="Explained">Not killed, since they change nothing that a test could notice: why stands beside each.</param>
/// <param name="KilledPercentOfTheRest">Killed, of all but those of the long tests and those explained.</param>
internal sealed record MutantTally(int Places, int Sampled, int Killed, int OfThemForEver, int Survived, int NotReached, int OnlyByLongTests, double KilledPercent, int Explained, double KilledPercentOfTheRest);

/// <summary>A change that no fast test noticed.</summary>
/// <param name="Where">File and line.</param>
/// <param name="Change">What stood there, and what stands there instead.</param>
/// <param name="Tests">How many fast tests pass it.</param>
/// <param name="Why">Why it stays: a group of the decision record, or nothing yet.</param>
internal sealed record Survivor(string Where, string Change, int Tests, string Why);

/// <summary>A run of the campaign.</summary>
/// <param name="Folders">By folder of Core, and all of them.</param>
/// <param name="FastTests">Tests that were run.</param>
/// <param name="LongTests">Tests left out as they take more than three seconds.</param>
/// <param name="OtherTests">Tests left out as they need more than the tests' own folder, or a skip.</param>
/// <param name="Survivors">What no fast test noticed.</param>
internal sealed record MutantResult(IReadOnlyDictionary<string, MutantTally> Folders, int FastTests, int LongTests, int OtherTests, IReadOnlyDictionary<string, int> Explained, IReadOnlyList<Survivor> Survivors);
