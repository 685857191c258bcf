namespace Heatwright.Jobs.Showing;

/// <summary>Written pictures as machines read them; no path of this machine stands in it.</summary>
public sealed record PicturesView(IReadOnlyList<WrittenPicture> Pictures, IReadOnlyList<string> Texts, IReadOnlyList<string> Chapters)
{
    /// <summary>The view of what was written.</summary>
    public static PicturesView Of(WrittenShow written) => new(written.Pictures, written.Texts, written.Chapters);
}
