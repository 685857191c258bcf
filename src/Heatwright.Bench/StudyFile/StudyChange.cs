namespace Heatwright.StudyFile;

/// <summary>A change as the history tells it.</summary>
/// <param name="Number">Rising number.</param>
/// <param name="At">When, UTC.</param>
/// <param name="What">What was done, in a maker's words.</param>
/// <param name="Undone">True while it is taken back.</param>
public sealed record StudyChange(long Number, DateTimeOffset At, string What, bool Undone);
