using Heatwright.Quantities;

namespace Heatwright.StudyFile;

/// <summary>Why a study file cannot be opened, created or written.</summary>
public enum OpenFault
{
    /// <summary>There is no such file.</summary>
    Missing,
    /// <summary>A folder stands there.</summary>
    Folder,
    /// <summary>The file is empty.</summary>
    Empty,
    /// <summary>The file is of another kind altogether.</summary>
    NotSqlite,
    /// <summary>A database, but of another program.</summary>
    OtherProgram,
    /// <summary>Made by a newer version.</summary>
    Newer,
    /// <summary>Cut short or damaged.</summary>
    Damaged,
    /// <summary>Another program holds it.</summary>
    Locked,
    /// <summary>It may not be read, or not be written.</summary>
    NoAccess,
    /// <summary>The disk is full or failing.</summary>
    Disk,
    /// <summary>The name is taken.</summary>
    Taken,
    /// <summary>Another window changed the same thing first.</summary>
    Overtaken,
}

/// <summary>A problem with the study file itself, with its kind for those who act on it.</summary>
/// <param name="Fault">The kind.</param>
/// <param name="What">What is not right.</param>
/// <param name="Where">The file.</param>
/// <param name="Value">What was met.</param>
/// <param name="Limit">What would be right.</param>
/// <param name="Next">What to do now.</param>
public sealed record OpenProblem(OpenFault Fault, string What, string Where, string Value, string Limit, string Next) : Problem(What, Where, Value, Limit, Next)
{
    /// <summary>How the command line ends on it: bad input, not our fault.</summary>
    public const int ExitCode = 2;

    /// <inheritdoc/>
    public override string ToString() => base.ToString();
}
