using Heatwright.Jobs;

namespace Heatwright.Tests.Journeys;

/// <summary>A photo kept with a part: as typed, as carried to the own shelf and on, as given back.</summary>
public sealed class PhotoJourney : IDisposable
{
    /// <summary>A PNG of one pixel; within it a text chunk that says where it was taken. The check sums stand as zeros: nothing here looks at them.</summary>
    public static byte[] OnePixel { get; } =
    [
        0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, 0, 0, 0, 13, .. "IHDR"u8, 0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0, 0, 0, 0, 0,
        0, 0, 0, 9, .. "tEXt"u8, .. "place\0her"u8, 0, 0, 0, 0, 0, 0, 0, 10, .. "IDAT"u8, 0x78, 0x9C, 0x63, 0, 0, 0, 2, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, .. "IEND"u8, 0, 0, 0, 0,
    ];

    private readonly Bench bench = new();

    private string Study => bench.In("bow.study");

    public PhotoJourney()
    {
        Do("new", Study);
        Do("part", "add", Study, "wire", "heater", "foam wire", "--measured", "ohms=2.71ohm (meter)");
        File.WriteAllBytes(bench.In("wire.jpg"), OnePixel);
    }

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_photo_is_kept_named_by_what_it_is_without_its_place_and_comes_back()
    {
        Assert.Contains("Kept as 'wire.png' with 'wire'", Do("part", "photo", Study, "wire", bench.In("wire.jpg"), "--note", "label side"), StringComparison.Ordinal);
        Assert.Contains("label side", Do("file", "list", Study), StringComparison.Ordinal);
        Do("file", "take", Study, "wire.png", bench.In("back.png"));
        byte[] back = File.ReadAllBytes(bench.In("back.png"));
        // By hand: the text chunk is 12 bytes and its 9 of content.
        Assert.Equal(OnePixel.Length - 21, back.Length);
        Assert.DoesNotContain("place", System.Text.Encoding.Latin1.GetString(back), StringComparison.Ordinal);
        Assert.Contains("has this photo already", Refused("part", "photo", Study, "wire", bench.In("wire.jpg")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_goes_with_its_part_to_the_own_shelf_and_into_the_next_study()
    {
        string shelf = bench.In("own/shelf.study"), next = bench.In("next.study");
        Do("new", next);
        Do("give", Study, "wire", "--shelf", shelf);
        Do("take", next, "wire", "--shelf", shelf);
        Do("part", "photo", Study, "wire", bench.In("wire.jpg"));
        Assert.Contains("newer here", Do("shelf", "compare", Study, "--shelf", shelf), StringComparison.Ordinal);
        Do("give", Study, "wire", "--shelf", shelf);
        Assert.Contains("newer there", Do("shelf", "compare", next, "--shelf", shelf), StringComparison.Ordinal);
        Do("take", next, "wire", "--shelf", shelf);
        Assert.Contains("wire: same", Do("shelf", "compare", next, "--shelf", shelf), StringComparison.Ordinal);
        Do("file", "take", next, "wire.png", bench.In("carried.png"));
        Assert.Equal(OnePixel.Length - 21, new FileInfo(bench.In("carried.png")).Length);
    }

    [Fact]
    public void A_dropped_part_takes_its_photo_along_and_undo_brings_both_back()
    {
        Do("part", "photo", Study, "wire", bench.In("wire.jpg"));
        Do("part", "drop", Study, "wire");
        Assert.Empty(OpenStudy.Read(Study).Value.Study.Files);
        Do("undo", Study);
        Assert.Single(OpenStudy.Read(Study).Value.Study.Files);
    }

    [Fact]
    public void What_is_no_photo_or_of_no_part_is_refused()
    {
        File.WriteAllText(bench.In("wire.jpg"), "not a picture");
        Assert.Contains("heatwright file add", Refused("part", "photo", Study, "wire", bench.In("wire.jpg")), StringComparison.Ordinal);
        File.WriteAllBytes(bench.In("wire.jpg"), OnePixel);
        Assert.Contains("There is no part of this name.", Refused("part", "photo", Study, "stick", bench.In("wire.jpg")), StringComparison.Ordinal);
    }

    private string Do(params string[] words)
    {
        var done = bench.Type(words);
        Assert.True(done.Exit == 0, done.Error);
        return done.Out;
    }

    private string Refused(params string[] words)
    {
        var done = bench.Type(words);
        Assert.Equal(2, done.Exit);
        return done.Error;
    }
}
