using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Tests.Handbook;

public class TableFileTests
{
    private static readonly Bibliography Sources =
        Bibliography.Parse("""{ "a-book": { "title": "A book", "by": "Somebody", "year": 1950, "licence": "figures quoted" } }""");

    [Fact]
    public void A_table_with_a_known_source_loads() =>
        Assert.Equal(2.5, Parse(Sample()).Row("b").Number("size"));

    [Fact]
    public void A_table_with_an_unknown_source_does_not_load() =>
        Assert.Contains("'no-such-book'", Refused(Sample(source: "no-such-book")), StringComparison.Ordinal);

    [Fact]
    public void A_table_without_a_source_does_not_load() =>
        Assert.Contains("'source'", Refused(Sample(source: "")), StringComparison.Ordinal);

    [Fact]
    public void A_row_with_an_unknown_source_does_not_load() =>
        Assert.Contains("'hearsay'", Refused(Sample(columns: """ "name", "source" """, units: """ "word", "word" """, rows: """["a", "hearsay"]""")), StringComparison.Ordinal);

    [Fact]
    public void An_unknown_mark_does_not_load() =>
        Assert.Contains("'trust me'", Refused(Sample(mark: "trust me")), StringComparison.Ordinal);

    [Theory]
    [InlineData("""["a"]""")]
    [InlineData("""["a", "two"]""")]
    [InlineData("""[1, 2]""")]
    [InlineData("""["a", [2]]""")]
    [InlineData("")]
    public void Rows_that_do_not_fit_their_columns_do_not_load(string rows) => Refused(Sample(rows: rows));

    [Fact]
    public void A_heading_used_twice_does_not_load() => Refused(Sample(columns: """ "name", "name" """));

    [Fact]
    public void Common_practice_is_said_in_source_and_mark_or_in_neither()
    {
        Refused(Sample(source: Bibliography.CommonPractice));
        Refused(Sample(mark: "common practice"));
        Assert.IsType<Origin.Assumed>(Parse(Sample(source: Bibliography.CommonPractice, mark: "common practice")).Rows[0].Origin);
    }

    [Fact]
    public void The_mark_from_memory_reaches_the_origin_of_a_value()
    {
        var origin = Assert.IsType<Origin.Published>(Parse(Sample(mark: "from memory")).Rows[0].Origin);
        Assert.Equal(new SourceKey("a-book"), origin.Source);
        Assert.Equal("page 3 (from memory)", origin.Where);
    }

    [Fact]
    public void A_row_may_carry_its_own_mark()
    {
        var table = Parse(Sample(columns: """ "name", "mark" """, units: """ "word", "word" """, rows: """["a", "from memory"], ["b", null]"""));
        Assert.Equal([Mark.FromMemory, Mark.Published], table.Rows.Select(row => row.Mark));
    }

    [Fact]
    public void An_empty_place_is_null_and_never_zero()
    {
        var row = Parse(Sample(rows: """["a", null]""")).Rows[0];
        Assert.Null(row.NumberOrNull("size"));
        Assert.Throws<InvalidOperationException>(() => row.Number("size"));
    }

    [Fact]
    public void A_missing_row_or_column_says_what_there_is()
    {
        var table = Parse(Sample());
        Assert.Contains("a, b", Assert.Throws<KeyNotFoundException>(() => table.Row("c")).Message, StringComparison.Ordinal);
        Assert.Contains("name, size", Assert.Throws<KeyNotFoundException>(() => table.Rows[0].Number("weight")).Message, StringComparison.Ordinal);
    }

    private static Table Parse(string json) => TableFile.Parse(json, Sources);

    private static string Refused(string json) => Assert.Throws<FormatException>(() => Parse(json)).Message;

    private static string Sample(string source = "a-book", string mark = "published", string columns = """ "name", "size" """,
        string units = """ "word", "mm" """, string rows = """["a", 1], ["b", 2.5]""") =>
        $$"""
        { "table": "sample", "source": "{{source}}", "where": "page 3", "mark": "{{mark}}",
          "columns": [{{columns}}], "units": [{{units}}], "rows": [{{rows}}] }
        """;
}
