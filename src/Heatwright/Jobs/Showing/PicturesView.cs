namespace Heatwright.Jobs.Showing;

/// <summary>Written pictures as machines read them; no path of this machine stands in it.</summary>
/// <param name="Pictures">The pictures.</param>
/// <param name="Texts">Names of the text files.</param>
/// <param name="Chapters">Chapter lines of the film.</param>
public sealed record PicturesView(IReadOnlyList<WrittenPicture> Pictures, IReadOnlyList<string> Texts, IReadOnlyList<string> Chapters)
{
    /// <summary>The view of what was written.</summary>
    public static PicturesView Of(WrittenShow written) => new(written.Pictures, written.Texts, written.Chapters);
}
