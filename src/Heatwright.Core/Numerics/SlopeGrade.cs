namespace Heatwright.Numerics;

/// <summary>How fine the slopes are wanted: coarse far from the minimum, fine for the last steps and the covariance.</summary>
internal enum SlopeGrade
{
    /// <summary>One more evaluation a parameter; error about the root of the noise.</summary>
    Forward,

    /// <summary>Two a parameter; error about noise^(2/3).</summary>
    Central,

    /// <summary>Four or more a parameter, the step found by trial; error about 1e-11.</summary>
    Fine,
}
