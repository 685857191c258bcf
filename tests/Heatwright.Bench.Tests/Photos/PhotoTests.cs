using System.Text;
using CsCheck;
using Heatwright.Photos;

namespace Heatwright.Tests.Photos;

/// <summary>Photos are told by their content, and keep nothing of where and with what they were taken.</summary>
public sealed class PhotoTests
{
    [Fact]
    public void Each_kind_is_told_by_its_content_whatever_its_name_says()
    {
        Assert.Equal(("image/jpeg", 640, 480), Told(Pictures.Jpeg()));
        Assert.Equal(("image/png", 32, 16), Told(Pictures.Png()));
        Assert.Equal(("image/webp", 300, 200), Told(Pictures.Webp()));
    }

    [Fact]
    public void Place_comment_maker_and_second_picture_are_gone_and_what_draws_it_is_there()
    {
        foreach (byte[] picture in new[] { Pictures.Jpeg(), Pictures.Png(), Pictures.Webp() })
        {
            Assert.Contains(Pictures.Place, Latin(picture), StringComparison.Ordinal);
            string kept = Latin(Photo.Read(picture, "x").Value.Bytes);
            Assert.DoesNotContain(Pictures.Place, kept, StringComparison.Ordinal);
            Assert.DoesNotContain("Cam", kept, StringComparison.Ordinal);
        }

        string jpeg = Latin(Photo.Read(Pictures.Jpeg(), "x").Value.Bytes);
        Assert.Contains("JFIF", jpeg, StringComparison.Ordinal);
        Assert.Contains("ICC_PROFILE\0colours", jpeg, StringComparison.Ordinal);
        Assert.EndsWith(Latin([.. Pictures.Scan, 0xFF, 0xD9]), jpeg, StringComparison.Ordinal);
        string png = Latin(Photo.Read(Pictures.Png(), "x").Value.Bytes);
        Assert.Equal(["IHDR", "IDAT", "IEND"], new[] { "IHDR", "tEXt", "IDAT", "eXIf", "IEND" }.Where(name => png.Contains(name, StringComparison.Ordinal)));
        byte[] webp = Photo.Read(Pictures.Webp(), "x").Value.Bytes;
        Assert.Equal(webp.Length - 8, BitConverter.ToInt32(webp, 4));
        Assert.Equal(0, webp[20]); // flags of the container: neither Exif nor XMP is announced any more
    }

    [Fact]
    public void A_picture_taken_upright_stays_upright()
    {
        // The orientation entry by hand: tag 0x0112, type 3 (short), one of them, value 6, most significant byte first.
        string kept = Latin(Photo.Read(Pictures.Jpeg(), "x").Value.Bytes);
        Assert.Contains("Exif\0\0MM\0*\0\0\0\u0008\0\u0001\u0001\u0012\0\u0003\0\0\0\u0001\0\u0006\0\0", kept, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_cut_once_is_cut_no_further() => Assert.All(new[] { Pictures.Jpeg(), Pictures.Png(), Pictures.Webp() }, picture =>
    {
        byte[] once = Photo.Read(picture, "x").Value.Bytes;
        Assert.Equal(once, Photo.Read(once, "x").Value.Bytes);
    });

    [Fact]
    public void A_picture_cut_short_anywhere_is_refused_or_whole()
    {
        foreach (byte[] whole in new[] { Pictures.Jpeg(), Pictures.Png(), Pictures.Webp() })
        {
            byte[] kept = Photo.Read(whole, "x").Value.Bytes;
            for (int length = 0; length < whole.Length; length++)
            {
                var read = Photo.Read(whole[..length], "x");
                Assert.True(!read.IsFine || read.Value.Bytes.AsSpan().SequenceEqual(kept), $"{length} of {whole.Length}");
            }
        }
    }

    [Fact]
    public void Bytes_that_only_begin_like_a_picture_are_answered_and_never_crash() => Gen.Select(Gen.Int[0, 2], Gen.Byte.Array[0, 200]).Sample(drawn =>
    {
        byte[] begin = new[] { Pictures.Jpeg()[..3], Pictures.Png()[..8], Pictures.Webp()[..12] }[drawn.Item1];
        var read = Photo.Read([.. begin, .. drawn.Item2], "x");
        return read.IsFine || read.Problems is [{ Next.Length: > 10 }];
    }, iter: 2000);

    [Fact]
    public void Other_content_and_large_pictures_are_refused_with_the_next_step()
    {
        Assert.Contains("no photo that can be kept", Assert.Single(Photo.Read("<svg onload='x'>"u8.ToArray(), "part.jpg").Problems).What, StringComparison.Ordinal);
        Assert.Contains("too large", Assert.Single(Photo.Read(new byte[Photo.LargestBytes + 1], "part.jpg").Problems).What, StringComparison.Ordinal);
    }

    private static (string, int, int) Told(byte[] picture) => Photo.Read(picture, "named.txt").Value is var photo ? (photo.Type, photo.Width, photo.Height) : default;

    private static string Latin(byte[] bytes) => Encoding.Latin1.GetString(bytes);
}
