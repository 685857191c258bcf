using CsCheck;
using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

public sealed class LabelledLineTests
{
    private static readonly string[] Bits = ["tip", "set", "t.1", "_a", "T°", "V", "mV", "e3", "E", "OL", "nan", ":", ":", "=", ",", ";", "|", "\t", " ", "-", "+", "1", "23", "4.5", "6,7", "8e2", "12:30:01", "\"", "%", "x/y", "null"];

    [Fact]
    public void The_short_cut_reads_what_the_expression_reads() => Gen.Int[0, Bits.Length - 1].Select(i => Bits[i]).Array[1, 14].Sample(
        bits =>
        {
            string line = string.Concat(bits);
            Assert.Equal(LabelledLine.Pairs(line, null, byExpressionAlone: true), LabelledLine.Pairs(line, null));
        },
        iter: 50_000);

    [Fact]
    public void Lines_as_boards_print_them_are_read_and_the_room_is_used_again()
    {
        var room = new Dictionary<string, string>(StringComparer.Ordinal) { ["old"] = "1" };
        Assert.Same(room, LabelledLine.Pairs("tip:231.5,set:240 V;x=-1,5mV", room));
        Assert.Equal([KeyValuePair.Create("tip", "231.5"), KeyValuePair.Create("set", "240 V"), KeyValuePair.Create("x", "-1,5 mV")], room);
        Assert.Null(LabelledLine.Pairs("boot: ready", room));
    }
}
