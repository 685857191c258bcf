using System.Text;
using Heatwright.Photos;
using Heatwright.StudyFile;

namespace Heatwright.Jobs.Sharing;

/// <summary>Kept files as they may go to strangers: photos without what a camera wrote beside them, texts as they are, nothing that cannot be looked into.</summary>
internal static class SharedFiles
{
    /// <summary>The study with what may go along, which photos were cut, and which files stay at home and why.</summary>
    public static (Study Study, IReadOnlyList<string> Cut, IReadOnlyList<string> Stay) Of(Study study)
    {
        List<KeptFile> go = [];
        List<string> cut = [], stay = [];
        foreach (var file in study.Files)
        {
            byte[] content = file.Content ?? throw new ArgumentException($"The bytes of '{file.Id}' are not at hand; read the whole study.", nameof(study));
            if (Photo.TypeOf(content) is not null)
            {
                // A photo that 'file add' kept is byte for byte what the camera wrote: it is cut here, whatever its name says.
                if (Photo.Read(content, file.Id) is { IsFine: true } photo)
                {
                    go.Add(KeptFile.Of(file.Id, file.Name, file.About, file.Subject, file.Note, photo.Value.Bytes));
                    cut.Add(file.Id);
                }
                else
                {
                    stay.Add($"{file.Id}: a photo whose place and camera data cannot be cut out");
                }
            }
            else if (IsText(content))
            {
                go.Add(file);
            }
            else
            {
                stay.Add($"{file.Id}: it may hold what cannot be looked for; only JPEG, PNG and WebP photos and plain texts go along");
            }
        }

        return (study with { Files = go }, cut, stay);
    }

    /// <summary>Text in UTF-8, or in one byte a letter without control signs.</summary>
    private static bool IsText(byte[] content)
    {
        if (content.Any(b => b < 32 && b is not (9 or 10 or 13)))
        {
            return false;
        }

        try
        {
            _ = new UTF8Encoding(false, throwOnInvalidBytes: true).GetCharCount(content);
            return true;
        }
        catch (DecoderFallbackException)
        {
            return content.All(b => b is < 0x80 or >= 0xA0); // Latin-1, as older loggers write it
        }
    }
}
