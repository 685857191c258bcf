using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Formulas out of the data files. Every answer by hand.</summary>
public sealed class FormulaTests
{
    /// <summary>a = 2, b = 3, long name = 5; a row 4 1 7 and one 6 6 6, none of a word; what a reading is doubted by is 0.5.</summary>
    private sealed class Facts : IFacts
    {
        public double Value(string name) => name switch { "a" => 2, "b" => 3, "long name" => 5, "or2" => 9, _ => double.NaN };

        public double[] Series(string name) => name switch { "row" => [4, double.NaN, 1, 7], "same" => [6, 6, 6], "two" => [6, 6], "tens" => [10, 30, 20], "odd" => [1, 1.1, 0.9, 1, 50], _ => [] };

        public double Ask(string function, string name) => function == "doubt" ? 0.5 : function == "before" ? 11 : 13;
    }

    [Theory]
    [InlineData("2", 2), InlineData("1.5e3", 1500), InlineData("1.5e-3", 0.0015), InlineData(".5", 0.5), InlineData("a", 2), InlineData("long_name", 5), InlineData(" a ", 2)]
    [InlineData("a+b", 5), InlineData("a-b", -1), InlineData("a*b", 6), InlineData("b/a", 1.5), InlineData("7-2-1", 4), InlineData("8/2/2", 2), InlineData("8/2*3", 12), InlineData("2+3*4", 14), InlineData("(2+3)*4", 20), InlineData("7-2*3+1", 2)]
    [InlineData("2^3", 8), InlineData("2^3^2", 512), InlineData("2*3^2", 18), InlineData("-2^2", -4), InlineData("-a+b", 1), InlineData("2--3", 5), InlineData("2*-3", -6), InlineData("1e2-1", 99), InlineData("2-1", 1)]
    [InlineData("a<b", 1), InlineData("b<a", 0), InlineData("a<2", 0), InlineData("a<=2", 1), InlineData("b<=2", 0), InlineData("b>a", 1), InlineData("a>b", 0), InlineData("a>2", 0), InlineData("a>=2", 1), InlineData("a>=b", 0)]
    [InlineData("a==2", 1), InlineData("a==b", 0), InlineData("a!=2", 0), InlineData("a!=b", 1), InlineData("a!=none", 0), InlineData("none!=a", 0), InlineData("none==none", 0), InlineData("none<1", 0), InlineData("none>1", 0)]
    [InlineData("a+1>b-1", 1), InlineData("a>1 and b>1", 1), InlineData("a>1 and b>9", 0), InlineData("a>9 and b>1", 0), InlineData("a>9 or b>1", 1), InlineData("a>1 or b>9", 1), InlineData("a>9 or b>9", 0)]
    [InlineData("a>1 or a>9 and a>9", 1), InlineData("(a>1 or a>9) and a>9", 0), InlineData("not a>9", 1), InlineData("not a>1", 0), InlineData("not not a>1", 1), InlineData("not a>9 and b>1", 1), InlineData("or2", 9), InlineData("not 0", 1), InlineData("not none", 1)]
    [InlineData("abs(-4)", 4), InlineData("abs(a-b)", 1), InlineData("sqrt(9)", 3), InlineData("ln(exp(2))", 2), InlineData("exp(0)", 1), InlineData("ln(1)", 0), InlineData("min(3,2,5)", 2), InlineData("max(3,2,5)", 5), InlineData("min(a)", 2), InlineData("max(a,b)*2", 6), InlineData("max( a , b )", 3)]
    [InlineData("count(row)", 3), InlineData("first(row)", 4), InlineData("last(row)", 7), InlineData("highest(row)", 7), InlineData("lowest(row)", 1), InlineData("mean(row)", 4), InlineData("median(row)", 4), InlineData("count(no_row)", 0)]
    [InlineData("alike(same)", 1), InlineData("alike(two)", 0), InlineData("alike(row)", 0), InlineData("multiple(tens)", 10), InlineData("multiple(row)", 0)]
    [InlineData("doubt(a)", 0.5), InlineData("before(a)", 11), InlineData("after(a)", 13), InlineData("swapped(a)", 13), InlineData("alone(a)", 13), InlineData("2*doubt( long_name )", 1)]
    public void A_formula_is_worked_out(string text, double expected) => Assert.Equal(expected, Formula.Read(text).Of(new Facts()), 1e-12);

    [Theory, InlineData("none"), InlineData("none+1"), InlineData("mean(no_row)"), InlineData("highest(no_row)"), InlineData("sqrt(0-1)")]
    public void What_is_not_known_is_no_number_and_holds_nothing(string text)
    {
        Assert.True(double.IsNaN(Formula.Read(text).Of(new Facts())));
        Assert.False(Formula.Read(text).Holds(new Facts()));
    }

    [Theory, InlineData("1", true), InlineData("0", false), InlineData("-1", false), InlineData("0.1", true)]
    public void A_rule_holds_above_nothing(string text, bool holds) => Assert.Equal(holds, Formula.Read(text).Holds(new Facts()));

    [Fact]
    public void All_names_that_are_asked_for_are_told() =>
        Assert.Equal(["a", "long name", "other row", "row", "volts"], Formula.Read("a > 1 and not mean(row) > long_name or doubt(volts) > last(other_row) * a").Names.Order(StringComparer.Ordinal));

    [Theory, InlineData("a b"), InlineData("(a"), InlineData("a+"), InlineData(""), InlineData("abs(a"), InlineData("mean(row"), InlineData("a)"), InlineData("max(a b)"), InlineData("#")]
    public void What_cannot_be_read_is_a_bug_and_says_where(string text) => Assert.Contains($"'{text}'", Assert.Throws<FormatException>(() => Formula.Read(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_function_that_there_is_not_is_a_bug() => Assert.Throws<FormatException>(() => Formula.Read("widest(row)").Of(new Facts()));
}
