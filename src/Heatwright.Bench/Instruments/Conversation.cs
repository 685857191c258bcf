using System.Globalization;

namespace Heatwright.Instruments;

/// <summary>What goes on while a connection is open: lines that come by themselves, or answers to questions.</summary>
internal sealed class Conversation(SourcePlan plan, Inlet inlet, BenchClock clock, LineReader reader, List<Heard> heard, Func<Task> emit, Action goesWell)
{
    private const double TickS = 0.25;
    private const double LeastSilenceS = 5;

    /// <summary>A network instrument that has said nothing after this time wants to be asked.</summary>
    private const double UnaskedS = 1;

    /// <summary>Bytes that come at once after opening may be the middle of a line; after so long a pause they begin one.</summary>
    private const double CleanStartS = 0.05;

    private const int MostMisses = 5;

    private readonly LineCutter cutter = new();
    private readonly List<RawLine> lines = [];
    private bool toldNoText;
    private int bytes;
    private int noText;
    private double lastS;
    private double longestGapS;
    private bool silent;

    /// <summary>True once anything came.</summary>
    public bool HeardAny => bytes > 0;

    /// <summary>Runs until the connection ends or is worth opening anew; says in words why it ended.</summary>
    public async Task<string> Run(CancellationToken cancel) => plan.Ask is { } question
        ? await Asking(question, cancel).ConfigureAwait(false)
        : await Listening(cancel).ConfigureAwait(false);

    private async Task<string> Listening(CancellationToken cancel)
    {
        double openedS = lastS = clock.NowS;
        while (true)
        {
            if (await inlet.Next(TickS, cancel).ConfigureAwait(false) is { } chunk)
            {
                Take(chunk, openedS);
            }
            else if (inlet.Ended)
            {
                cutter.Rest(clock.NowS, whole: !cutter.SawEnd, lines);
                Read();
                await emit().ConfigureAwait(false);
                return "The connection has ended.";
            }
            else if (plan.Address is SourceAddress.Tcp && cutter is { SawEnd: false } && clock.NowS - openedS > UnaskedS)
            {
                return await Asking(SourcePlan.UsualQuestion, cancel).ConfigureAwait(false);
            }
            else
            {
                Pause();
            }

            await emit().ConfigureAwait(false);
        }
    }

    private void Take(Chunk chunk, double openedS)
    {
        if (bytes == 0 && chunk.AtS - openedS < CleanStartS && plan.Address is not SourceAddress.Replay)
        {
            cutter.MayBeCut();
        }

        bytes = Math.Min(int.MaxValue / 2, bytes + chunk.Bytes.Length);
        longestGapS = Math.Max(longestGapS, chunk.AtS - lastS);
        lastS = chunk.AtS;
        if (silent)
        {
            silent = false;
            heard.Add(new Heard.Note(plan.Name, chunk.AtS, LinkState.Open, "It speaks again."));
        }

        IsText(chunk);
        cutter.Add(chunk.Bytes, chunk.AtS, lines);
        Read();
    }

    private void Read()
    {
        foreach (var line in lines)
        {
            reader.Take(line, heard);
        }

        lines.Clear();
        if (heard.Any(one => one is Heard.Line))
        {
            goesWell();
        }
    }

    private void Pause()
    {
        if (cutter is { HasPending: true, SawEnd: false } && clock.NowS - cutter.LastS > TickS * 0.9)
        {
            cutter.Rest(cutter.LastS, whole: true, lines);
            Read();
        }

        reader.Pause(clock.NowS, heard);
        if (!silent && clock.NowS - lastS > Math.Max(LeastSilenceS, 5 * longestGapS) && plan.Address is not SourceAddress.Replay)
        {
            silent = true;
            heard.Add(new Heard.Note(plan.Name, clock.NowS, LinkState.Silent, string.Create(CultureInfo.InvariantCulture,
                $"Nothing came for {clock.NowS - lastS:0} s. Check its power and its lead{(plan.Address is SourceAddress.Serial ? ", and the speed; if it has to be asked, say what with --ask" : "")}.")));
        }
    }

    /// <summary>A wrong speed shows as bytes that are no text.</summary>
    private void IsText(Chunk chunk)
    {
        if (plan.Address is not SourceAddress.Serial serial || toldNoText)
        {
            return;
        }

        noText += chunk.Bytes.Count(b => b is > 0x7E or (< 0x20 and not ((byte)'\t' or (byte)'\r' or (byte)'\n')));
        if (bytes >= 256 && noText > bytes * 0.3)
        {
            toldNoText = true;
            heard.Add(new Heard.Note(plan.Name, chunk.AtS, LinkState.Question, string.Create(CultureInfo.InvariantCulture,
                $"Most of what comes is no text. Is {serial.Speed} its speed? Try another behind the @: 9600, 19200, 38400, 57600, 115200, 230400.")));
        }
    }

    private async Task<string> Asking(string question, CancellationToken cancel)
    {
        var talk = new ScpiTalk(inlet, clock, question);
        if (await talk.Begin(cancel).ConfigureAwait(false) is { } why)
        {
            bytes = Math.Max(bytes, talk.Lines);
            return why;
        }

        if (talk.Manner.Length > 0)
        {
            heard.Add(new Heard.Note(plan.Name, clock.NowS, LinkState.Understood, $"{(talk.Identity.Length > 0 ? $"It says it is {talk.Identity}" : "It answers")}; {talk.Manner}. Asked: {question}"));
        }

        await emit().ConfigureAwait(false);
        return await Asked(talk, question, cancel).ConfigureAwait(false);
    }

    private async Task<string> Asked(ScpiTalk talk, string question, CancellationToken cancel)
    {
        double dueS = clock.NowS;
        int misses = 0;
        while (misses < MostMisses)
        {
            var answer = await talk.Reading(cancel).ConfigureAwait(false);
            bytes = Math.Max(bytes, talk.Lines);
            if (inlet.Ended && answer is null)
            {
                return "The connection has ended.";
            }

            misses = Told(question, answer) ? 0 : misses + 1;
            if (misses == 1 && answer is null)
            {
                heard.Add(new Heard.Note(plan.Name, clock.NowS, LinkState.Silent, $"No answer to {question}; it is asked again."));
            }

            await emit().ConfigureAwait(false);
            if (talk.IsLost)
            {
                return $"The answer to {question} is still out, and would be taken for the next one's.";
            }

            dueS = Math.Max(dueS + plan.EveryS, clock.NowS);
            await clock.Wait(dueS - clock.NowS, cancel).ConfigureAwait(false);
        }

        return $"{MostMisses.ToString(CultureInfo.InvariantCulture)} questions without a reading.";
    }

    private bool Told(string question, RawLine? answer)
    {
        if (answer is not { } line)
        {
            return false;
        }

        if (!question.Contains('?', StringComparison.Ordinal))
        {
            reader.Take(line, heard);
        }
        else
        {
            heard.Add(ScpiAnswer.Read(question, line.Text) is { } readouts
                ? new Heard.Line(plan.Name, line.AtS, line.Text, readouts)
                : new Heard.Unread(plan.Name, line.AtS, line.Text, "it is no number"));
        }

        bool well = heard.Any(one => one is Heard.Line) || !question.Contains('?', StringComparison.Ordinal);
        if (well)
        {
            goesWell();
        }

        return well;
    }
}
