using System.Text.Json;
using CsCheck;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Tests.StudyFile;

public class StudyJsonTests
{
    [Fact]
    public void Names_and_words_are_camel_case_and_ids_are_bare() =>
        Assert.Equal("""{"id":"up","kind":"stepUp","name":"module","stated":[],"count":1,"from":"bought","words":{},"note":""}""",
            JsonSerializer.Serialize(new Part(new("up"), PartKind.StepUp, "module", []), StudyJson.Options));

    [Fact]
    public void Every_digit_of_a_number_comes_back() => Gen.Double.Where(double.IsFinite).Sample(number =>
        BitConverter.DoubleToInt64Bits(JsonSerializer.Deserialize<double>(JsonSerializer.Serialize(number, StudyJson.Options), StudyJson.Options)) == BitConverter.DoubleToInt64Bits(number));

    [Theory]
    [InlineData("""{"unit":"V","percent":"1","offset":0,"resolution":0}""")]
    [InlineData("""{"unit":"V","percent":1,"offset":0,"resolution":0,"colour":1}""")]
    [InlineData("""{"unit":"V","percent":1,"offset":0}""")]
    [InlineData("""{"unit":null,"percent":1,"offset":0,"resolution":0}""")]
    [InlineData("""{"unit":"V","unit":"A","percent":1,"offset":0,"resolution":0}""")]
    [InlineData("""{"unit":"V","percent":"NaN","offset":0,"resolution":0}""")]
    public void What_is_not_exactly_right_is_refused(string json) =>
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<InstrumentSpec>(json, StudyJson.Options));

    [Fact]
    public void A_number_that_is_none_is_not_written() =>
        Assert.Throws<ArgumentException>(() => JsonSerializer.Serialize(double.NaN, StudyJson.Options));

    [Fact]
    public void A_number_is_no_word() =>
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<PartKind>("1", StudyJson.Options));

    [Fact]
    public void Nothing_that_opens_a_tag_is_written_for_machines() =>
        Assert.DoesNotContain("<", JsonSerializer.Serialize(new PartId("</script>"), StudyJson.Options), StringComparison.Ordinal);
}
