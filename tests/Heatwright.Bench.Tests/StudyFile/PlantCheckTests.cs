using Heatwright.StudyFile;

namespace Heatwright.Tests.StudyFile;

/// <summary>A stated plant comes back as it was, and what cannot be is refused with its place.</summary>
public class PlantCheckTests
{
    private static readonly string Sample = Path.Combine(Repository.Root, "samples", "benchmark-mission-1");

    [Fact]
    public void A_stated_plant_comes_back_from_a_zip_and_from_a_study_file_as_it_was()
    {
        using var desk = new Desk();
        var study = Bundle.Read(Sample).Value;
        Assert.Single(study.Plants);
        Assert.Empty(Bundle.Write(study, desk.At("a.zip")).Problems);
        Assert.Equal(Spelled.Out(study), Spelled.Out(Bundle.Read(desk.At("a.zip")).Value));
        using var book = StudyBook.Create(desk.At("a.study"), study, TimeProvider.System).Value;
        Assert.Equal(Spelled.Out(study), Spelled.Out(book.Read()));
    }

    [Fact]
    public void The_format_page_names_every_field()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "formats", "plant.md"));
        var fields = typeof(Heatwright.Arrangements.StatedPlant).Assembly.GetTypes()
            .Where(type => type.Namespace == "Heatwright.Arrangements" && type.Name.StartsWith("Stated", StringComparison.Ordinal) && !(type.IsAbstract && type.IsSealed))
            .SelectMany(type => type.GetProperties().Where(property => property.DeclaringType == type && property.GetMethod!.IsPublic)).Select(property => char.ToLowerInvariant(property.Name[0]) + property.Name[1..]);
        Assert.All(fields, field => Assert.Matches($"[`.\"]{field}(\\[\\])?[`.\"]", page));
    }

    [Theory]
    [InlineData("\"capacityAh\": 3.0", "\"capacityAh\": -3.0", "pack.cell.capacityAh")]
    [InlineData("\"ohm\": 1.6", "\"ohm\": 0", "load.heater.ohm")]
    [InlineData("\"instantOhm\": { \"flat\": 0.035 }", "\"instantOhm\": { \"flat\": -0.035 }", "pack.cell.instantOhm.flat")]
    [InlineData("\"instantOhm\": { \"flat\": 0.035 }", "\"instantOhm\": { \"points\": [[0, 1], [0, 2]] }", "pack.cell.instantOhm.points")]
    [InlineData("\"instantOhm\": { \"flat\": 0.035 }", "\"instantOhm\": { }", "pack.cell.instantOhm")]
    [InlineData("\"shortS\": 20", "\"shortS\": 0", "pack.cell.shortS")]
    [InlineData("\"series\": 2", "\"series\": 0", "pack.series")]
    [InlineData("\"heaterNode\": \"heater\"", "\"heaterNode\": \"haeter\"", "heat.heaterNode")]
    [InlineData("\"name\": \"shank\"", "\"name\": \"tip\"", "heat.nodes[2].name")]
    [InlineData("\"jPerK\": 1.2", "\"jPerK\": 0", "heat.nodes[0].jPerK")]
    [InlineData("\"wPerK\": 0.35", "\"wPerK\": -0.35", "heat.links[0].wPerK")]
    [InlineData("\"everyS\": 30", "\"everyS\": 3", "work.everyS")]
    [InlineData("\"periodS\": 0.25", "\"periodS\": 0", "control.pi.periodS")]
    [InlineData("\"pi\": {", "\"duty\": 0.5, \"pi\": {", "control")]
    [InlineData("\"pi\": {", "\"onOff\": { \"lowC\": 350, \"highC\": 350 }, \"pi\": {", "control.onOff.highC")]
    [InlineData("\"pi\": {", "\"readingStepK\": -1, \"pi\": {", "control.readingStepK")]
    [InlineData("\"load\": {", "\"path\": { \"linear\": { \"setV\": 0 } }, \"load\": {", "path.linear.setV")]
    [InlineData("\"load\": {", "\"path\": { \"stepDown\": { \"setV\": 5 }, \"stepUp\": { \"setV\": 5 } }, \"load\": {", "path")]
    [InlineData("\"load\": {", "\"path\": { \"stepDown\": { \"setV\": 5, \"maxDuty\": 0 } }, \"load\": {", "path.stepDown.maxDuty")]
    [InlineData("\"heater\": { \"ohm\": 1.6", "\"voltsAmps\": [[1, 2], [1, 3]], \"heater\": { \"ohm\": 1.6", "load.voltsAmps")]
    [InlineData("\"load\": {", "\"charger\": { \"setA\": 1, \"holdV\": 8.4, \"endA\": 2 }, \"load\": {", "charger.endA")]
    [InlineData("\"load\": {", "\"charger\": { \"setA\": 1, \"holdV\": 8.4, \"endA\": 0.1 }, \"load\": {", "load")]
    [InlineData("\"series\": 2", "\"series\": 2, \"groups\": [[{}]]", "pack.series")]
    [InlineData("\"series\": 2", "\"groups\": [[{ \"capacityFactor\": 0 }]]", "pack.groups[0].capacityFactor")]
    [InlineData("\"cutoffV\": 5.6", "\"cutoffV\": -1", "end.cutoffV")]
    [InlineData("\"at\": \"sensor\"", "\"at\": \"nose\"", "marks[0].at")]
    [InlineData("\"loopOhm\": 0.06", "\"loopOhms\": 0.06", "pack.loopOhms")]
    public void What_cannot_be_is_refused_at_its_place(string from, string to, string place)
    {
        using var desk = new Desk();
        string text = File.ReadAllText(Path.Combine(Sample, "study.json"));
        Assert.Contains(from, text, StringComparison.Ordinal);
        Directory.CreateDirectory(desk.At("b"));
        File.WriteAllText(Path.Combine(desk.At("b"), "study.json"), text.Replace(from, to, StringComparison.Ordinal));
        var problems = Bundle.Read(desk.At("b")).Problems;
        Assert.Contains(problems, problem => problem.Where.EndsWith($"plants[0].{place}", StringComparison.Ordinal));
    }
}
