namespace Heatwright.StudyFile;

/// <summary>One value of a record before and after a change.</summary>
/// <param name="Where">Its place in the record, in the names of the bundle: 'stated[ohms].value'.</param>
/// <param name="Before">What stood there; null: nothing.</param>
/// <param name="After">What stands there since; null: nothing.</param>
public sealed record FieldChange(string Where, string? Before, string? After);

/// <summary>What one change did to one record.</summary>
/// <param name="Change">The change.</param>
/// <param name="Kind">Kind of record: 'part', 'trial', 'run', 'readings', 'arrangement', 'brief' and so on.</param>
/// <param name="Id">Its id; empty for the records of which a study has one.</param>
/// <param name="Begun">True: the record was not there before.</param>
/// <param name="TakenAway">True: the record is not there since.</param>
/// <param name="Fields">The values that differ, in the order of the record.</param>
public sealed record RecordChange(StudyChange Change, string Kind, string Id, bool Begun, bool TakenAway, IReadOnlyList<FieldChange> Fields);
