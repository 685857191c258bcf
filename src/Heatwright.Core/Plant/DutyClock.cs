namespace Heatwright.Plant;

/// <summary>Which block of its duty the tool is in, and what it asks of controller and work.</summary>
internal sealed class DutyClock
{
    private const double Instant = 1e-9;

    private readonly DutyPattern? pattern;
    private readonly AssembledTool tool;
    private readonly Action<double> began;
    private int at = -1, round;
    private double endS;

    /// <param name="tool">The tool.</param>
    /// <param name="began">Told when a block begins.</param>
    public DutyClock(AssembledTool tool, Action<double> began)
    {
        (this.tool, this.began, pattern) = (tool, began, tool.Duty);
        pattern?.Refuse(tool.Controller, tool.Work);
    }

    public bool Over { get; private set; }

    public double NextS => pattern is null || Over ? double.PositiveInfinity : endS;

    /// <summary>A warm-up is on, which the target ends.</summary>
    public bool WarmsUp => pattern is not null && !Over && Block.Kind == DutyKind.WarmUp;

    /// <summary>Set point that the block asks for, K; 0: heater off; NaN: the controller's own.</summary>
    public double AskedK => pattern is null ? double.NaN : Over ? 0 : Block.Kind switch
    {
        DutyKind.Off => 0,
        DutyKind.StandBy => Block.SetK,
        _ => double.NaN,
    };

    private DutyBlock Block => pattern!.Blocks[at];

    /// <summary>Goes on to the block that is on now.</summary>
    /// <param name="now">Time, s.</param>
    /// <param name="kelvin">Temperature of the working node.</param>
    /// <param name="work">Told when pieces are to come.</param>
    public void Move(double now, double kelvin, WorkClock work)
    {
        // A pattern of warm-ups alone, of a tool that is warm, would go round for ever within one instant.
        for (int moves = 0; pattern is not null && !Over && moves <= pattern.Blocks.Count && (at < 0 || now >= endS - Instant || (WarmsUp && kelvin >= tool.TargetK - 1e-6)); moves++)
        {
            at++;
            if (at == pattern.Blocks.Count)
            {
                (at, round) = (0, round + 1);
            }

            if (round >= pattern.Rounds)
            {
                Over = true;
                return;
            }

            endS = now + (Block.Kind == DutyKind.Work ? Block.Pieces * tool.Work!.EveryS : Block.LastsS);
            if (Block.Kind == DutyKind.Work)
            {
                work.Come(now, Block.Pieces);
            }

            began(now);
        }
    }
}
