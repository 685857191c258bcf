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

    [Theory]
    [InlineData("seconds,supply_V,loop_A\n0,4.100,1.5\n10,4.050,1.5\n20,4.010,1.5\n", "time=seconds volts=supply amps=loop")]
    [InlineData("minute,U_cell_mV,load_A\n0,4100,1.5\n1,4050,1.5\n2,4010,1.5\n", "time=minute volts=U_cell amps=load")]
    [InlineData("t_s,U_cell,I_load\n0,4.100,1.5\n10,4.050,1.5\n20,4.010,1.5\n", "time=t volts=U_cell amps=I_load")]
    [InlineData("t (s),cell mV,current_mA\n0,4100,1500\n10,4050,1500\n20,4010,1500\n", "time=t volts=cell amps=current")]
    [InlineData("seconds,voltage,current\n0,4.100,1.5\n10,4.050,1.5\n20,4.010,1.5\n", "time=seconds volts=voltage amps=current")]
    [InlineData("s,V,A,C\n0,4.100,1.5,21\n10,4.050,1.5,21.5\n20,4.010,1.5,22\n", "time=s volts=V amps=A")]
    public void Names_with_a_unit_behind_them_or_a_letter_before_them_are_understood(string text, string told)
    {
        Assert.Equal(told, Told(Log(text), Discharge));

        // Where the amps need not be there they are taken all the same: nothing else of the run is in amperes.
        Assert.Equal(told, Told(Log(text), new(new("capacity"), TrialKind.Bench, new("cell"), []) { Card = "capacity" }));
    }

    [Fact]
    public void What_is_not_taken_is_told_with_where_it_could_go()
    {
        var log = Log("s,V,A,room_C,note\n0,4.1,1.5,21,3\n10,4.05,1.5,21,3\n20,4.01,1.5,21,4\n");
        var pairs = RunFromLog.Pair(log, Discharge, [], []);
        Assert.Equal(["room: cell degrees", "note: cell degrees"], RunFromLog.Left(log, Discharge, pairs.Value).Select(left => $"{left.Log}: {string.Join(' ', left.Could)}"));
        Trial cold = new(new("cold"), TrialKind.ColdOhms, new("wire"), []);
        var ohms = Log("ohms,V\n1.2,4.1\n1.3,4.2\n1.2,4.1\n");
        Assert.Equal(["V: "], RunFromLog.Left(ohms, cold, RunFromLog.Pair(ohms, cold, [], []).Value).Select(left => $"{left.Log}: {string.Join(' ', left.Could)}"));
    }

    [Theory]
    [InlineData("t (s),degC,W\n0,20,10\n10,24,10\n20,28,10\n", "time=t degrees=degC watts=W")]
    [InlineData("t (s),degC,P_heater\n0,20,10\n10,24,10\n20,28,10\n", "time=t degrees=degC watts=P_heater")]
    [InlineData("t (s),degC,V,A\n0,20,5,2\n10,24,5,2\n20,28,5,2\n", "time=t volts=V amps=A degrees=degC")]
    [InlineData("t (s),degC,V,A,W\n0,20,5,2,10\n10,24,5,2,10\n20,28,5,2,10\n", "time=t volts=V amps=A degrees=degC watts=W")]
    [InlineData("t (s),degC,V,W\n0,20,5,10\n10,24,5,10\n20,28,5,10\n", "time=t degrees=degC watts=W volts=V")]
    public void Watts_stand_for_volts_and_amps_of_a_warm_up(string text, string told) => Assert.Equal(told, Told(Log(text), new(new("up"), TrialKind.WarmUp, new("tip"), [])));

    [Theory]
    [InlineData("time degrees watts", "time degrees watts", "volts amps grip degrees")]
    [InlineData("time degrees watts volts", "time degrees watts", "volts amps grip degrees")]
    [InlineData("time degrees watts volts amps", "time volts amps degrees", "watts grip degrees")]
    [InlineData("", "time volts amps degrees", "watts grip degrees")]
    public void What_a_warm_up_needs_goes_by_what_it_has(string named, string needed, string perhaps)
    {
        var columns = RunFromLog.Columns(new(new("up"), TrialKind.WarmUp, new("tip"), []), named.Split(' '));
        Assert.Equal((needed, perhaps), (string.Join(' ', columns.Needed), string.Join(' ', columns.Perhaps)));
    }

    private static string Told(LogReading log, Trial trial)
    {
        var pairs = RunFromLog.Pair(log, trial, [], []);
        return pairs.IsFine ? string.Join(' ', pairs.Value.Select(pair => $"{pair.Run}={pair.Log}")) : pairs.Problems[0].Value;
    }
}
