using System.Text;
using Heatwright.Logs;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Tests.StudyFile;

public class RunFromLogTests
{
    private static readonly Trial Discharge = new(new("discharge"), TrialKind.Discharge, new("cell"), []);

    private static LogReading Log(string text) => LogReader.Read(Encoding.UTF8.GetBytes(text));

    [Fact]
    public void Columns_called_by_nothing_but_their_unit_are_taken_for_it()
    {
        var log = Log("t [s],V,mA\n0,4.1,500\n10,4.05,501\n20,4.01,499\n");
        var pairs = RunFromLog.Pair(log, Discharge, [], []);
        Assert.True(pairs.IsFine, pairs.IsFine ? "" : pairs.Problems[0].What);
        var run = RunFromLog.Make(new("one"), Discharge, log, pairs.Value, "");
        Assert.Equal([("time", "s"), ("volts", "V"), ("amps", "mA")], run.Columns.Select(column => (column.Name, column.Unit)));
        Assert.Equal(["10", "4.05", "501"], run.Readings[1].Raw);
    }

    [Fact]
    public void Two_columns_in_volts_stay_a_question()
    {
        var pairs = RunFromLog.Pair(Log("t [s],V,V2 (V),A\n0,4.1,4.2,1\n10,4.05,4.1,1\n20,4.01,4.1,1\n"), Discharge, [], []);
        Assert.False(pairs.IsFine);
        Assert.Contains("V or V2", pairs.Problems[0].Value);
    }
}
