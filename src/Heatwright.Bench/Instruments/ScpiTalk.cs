using System.Text;

namespace Heatwright.Instruments;

/// <summary>Asks an instrument that answers questions, and finds out how it wants to be asked.</summary>
internal sealed class ScpiTalk(Inlet inlet, BenchClock clock, string question)
{
    private const double HandshakePatienceS = 1;
    private const double LeastPatienceS = 2;
    private const double MostPatienceS = 10;

    /// <summary>An answer without line end is taken after so much silence.</summary>
    private const double NoEndS = 0.3;

    private static readonly string[] Ends = ["\n", "\r\n", "\r"];

    private readonly LineCutter cutter = new();
    private readonly Queue<RawLine> lines = new();
    private string end = "\n";
    private double slowestS;
    private RawLine? first;

    /// <summary>When the question was sent whose answer is still out; null: none is.</summary>
    private double? owedSinceS;

    /// <summary>Who the instrument says it is; empty where it does not.</summary>
    public string Identity { get; private set; } = "";

    /// <summary>How it wants to be asked, in words.</summary>
    public string Manner { get; private set; } = "";

    /// <summary>How many lines came so far.</summary>
    public int Lines { get; private set; }

    /// <summary>True: an answer is still out, and nothing would tell it from the answer to the next question.</summary>
    public bool IsLost { get; private set; }

    /// <summary>True: a question by the rules of IEEE 488.2; else a bare poke that makes an old meter send its reading.</summary>
    private bool IsQuestion => question.Contains('?', StringComparison.Ordinal);

    /// <summary>Tries line ends and the remote mode until the instrument answers; null: it does, else what was tried.</summary>
    public async Task<string?> Begin(CancellationToken cancel)
    {
        if (!IsQuestion)
        {
            return null;
        }

        foreach (bool remote in (bool[])[false, true])
        {
            foreach (string one in Ends)
            {
                if (end != one || remote)
                {
                    // What was sent with another line end may still lie before the instrument; an empty line finishes it.
                    end = one;
                    await Send("", cancel).ConfigureAwait(false);
                }

                if (remote)
                {
                    await Send("SYST:REM", cancel).ConfigureAwait(false);
                }

                // A greeting may come before the answer.
                var answer = await Ask("*IDN?", HandshakePatienceS, cancel, ScpiAnswer.IsIdentity).ConfigureAwait(false);
                bool known = answer is not null;
                if (known || (inlet.Ended is false && await Answers(HandshakePatienceS, cancel).ConfigureAwait(false)))
                {
                    Identity = known ? answer!.Value.Text : "";
                    Manner = $"lines end with {Shown(end)}{(remote ? ", remote mode set" : "")}";
                    return known && !remote ? await Measures(cancel).ConfigureAwait(false) : null;
                }

                if (inlet.Ended)
                {
                    return "It closed the connection.";
                }
            }
        }

        return $"No answer to *IDN? nor to {question}, with LF, CR LF and CR behind it, with and without SYST:REM before it.";
    }

    /// <summary>Asks; null: no answer in time.</summary>
    public async Task<RawLine?> Reading(CancellationToken cancel)
    {
        if (first is { } ready)
        {
            // What was measured to find out how to ask is a reading as good as any.
            first = null;
            return ready;
        }

        double patience = Math.Clamp(3 * slowestS, LeastPatienceS, MostPatienceS);
        if (owedSinceS is { } sinceS && !await InStep(sinceS, patience, cancel).ConfigureAwait(false))
        {
            return null;
        }

        double before = clock.NowS;
        var answer = await Ask(question, patience, cancel, text => text != Identity).ConfigureAwait(false);
        if (answer is not null)
        {
            slowestS = Math.Max(slowestS, clock.NowS - before);
        }
        else if (!inlet.Ended)
        {
            owedSinceS = before;
            await InStep(before, patience, cancel).ConfigureAwait(false);
        }

        return answer;
    }

    /// <summary>Waits until what is still owed can no longer be taken for the answer to the next question; false: not yet.</summary>
    /// <remarks>
    /// Answers come in the order of the questions, so one that says its name has no older answer left once it has said it again.
    /// One without a name gets the longest patience; where the answer is still out then, <see cref="IsLost"/> says that only a new connection helps.
    /// </remarks>
    private async Task<bool> InStep(double sinceS, double patienceS, CancellationToken cancel)
    {
        bool named = Identity.Length > 0;
        if (named)
        {
            await Send("*IDN?", cancel).ConfigureAwait(false);
        }

        var mark = named
            ? await Answer("*IDN?", patienceS, cancel, text => text == Identity).ConfigureAwait(false)
            : await Answer(question, IsQuestion ? MostPatienceS : patienceS, cancel).ConfigureAwait(false);
        if (mark is not null)
        {
            // Next time it is waited for so long.
            slowestS = Math.Min(MostPatienceS, Math.Max(slowestS, clock.NowS - sinceS));
        }

        IsLost = mark is null && !named && IsQuestion;
        // A bare poke has no answer of its own: whatever comes after it is what the meter shows then.
        owedSinceS = mark is not null || !IsQuestion ? null : sinceS;
        return owedSinceS is null;
    }

    private async Task<bool> Answers(double patienceS, CancellationToken cancel)
    {
        first = await Ask(question, patienceS, cancel, text => ScpiAnswer.Read(question, text) is not null).ConfigureAwait(false);
        return first is not null;
    }

    /// <summary>Some instruments say who they are but measure only in remote mode.</summary>
    private async Task<string?> Measures(CancellationToken cancel)
    {
        for (int round = 0; round < 2 && !inlet.Ended; round++)
        {
            if (await Answers(MostPatienceS / 2, cancel).ConfigureAwait(false))
            {
                return null;
            }

            if (round == 0)
            {
                await Send("SYST:REM", cancel).ConfigureAwait(false);
                Manner += ", remote mode set";
            }
        }

        string error = inlet.Ended ? "" : (await Ask("SYST:ERR?", HandshakePatienceS, cancel).ConfigureAwait(false))?.Text ?? "";
        return $"It says that it is {Identity}, but gives no number for {question}{(error.Length > 0 ? $"; it reports {error}" : "")}.";
    }

    private async Task<RawLine?> Ask(string text, double patienceS, CancellationToken cancel, Func<string, bool>? fits = null)
    {
        await Drain(cancel).ConfigureAwait(false);
        await Send(text, cancel).ConfigureAwait(false);
        return await Answer(text, patienceS, cancel, fits).ConfigureAwait(false);
    }

    private async Task<RawLine?> Answer(string text, double patienceS, CancellationToken cancel, Func<string, bool>? fits = null)
    {
        double until = clock.NowS + patienceS;
        while (true)
        {
            while (lines.TryDequeue(out var line))
            {
                string bare = ScpiAnswer.WithoutPrompt(line.Text);
                if (bare.Length > 0 && !bare.Equals(text, StringComparison.OrdinalIgnoreCase) && fits?.Invoke(bare) != false)
                {
                    return line with { Text = bare };
                }
            }

            // Once it has ended a line, an answer without an end is one whose rest is still on its way.
            bool mayLackEnd = cutter.HasPending && !cutter.SawEnd;
            double left = until - clock.NowS;
            if (left <= 0 || inlet.Ended)
            {
                return null;
            }

            if (await inlet.Next(mayLackEnd ? Math.Min(left, NoEndS) : left, cancel).ConfigureAwait(false) is { } chunk)
            {
                Take(chunk);
            }
            else if (cutter.HasPending && (inlet.Ended || (mayLackEnd && clock.NowS - cutter.LastS >= NoEndS * 0.9)))
            {
                var rest = new List<RawLine>();
                cutter.Rest(cutter.LastS, whole: true, rest);
                rest.ForEach(lines.Enqueue);
            }
        }
    }

    private async Task Drain(CancellationToken cancel)
    {
        while (await inlet.Next(0, cancel).ConfigureAwait(false) is not null)
        {
        }

        cutter.Clear();
        lines.Clear();
    }

    private void Take(Chunk chunk)
    {
        var found = new List<RawLine>();
        cutter.Add(chunk.Bytes, chunk.AtS, found);
        Lines = Math.Min(int.MaxValue / 2, Lines + found.Count);
        found.ForEach(lines.Enqueue);
    }

    private Task Send(string text, CancellationToken cancel) => inlet.Send(Encoding.ASCII.GetBytes(text + end), cancel);

    private static string Shown(string end) => end switch { "\n" => "LF", "\r\n" => "CR LF", _ => "CR" };
}
