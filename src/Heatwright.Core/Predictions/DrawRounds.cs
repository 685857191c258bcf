namespace Heatwright.Predictions;

/// <summary>Says of the draws so far whether they are enough.</summary>
public delegate bool EnoughDraws(ReadOnlySpan<Outcome> soFar);

/// <summary>How many draws a prediction takes: a first round, then twice as many and so on until they are enough.</summary>
/// <param name="First">Draws of the first round; draws are even in runs of 256.</param>
/// <param name="Most">At most.</param>
/// <param name="MostOneByOne">At most where the lanes do not take the tool and a draw costs twenty times as much.</param>
/// <param name="Settled">Whether those so far are enough.</param>
public sealed record DrawRounds(int First, int Most, int MostOneByOne, EnoughDraws Settled)
{
    /// <summary>Just so many.</summary>
    public static DrawRounds Of(int draws) => new(draws, draws, draws, _ => true);
}
