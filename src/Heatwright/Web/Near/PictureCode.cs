using System.Globalization;
using System.Text;
using ZXing;
using ZXing.QrCode;
using ZXing.QrCode.Internal;

namespace Heatwright.Web.Near;

/// <summary>An address as a picture that a camera reads: a QR code after ISO/IEC 18004.</summary>
internal static class PictureCode
{
    /// <summary>The empty edge that the standard asks for, in modules.</summary>
    public const int Quiet = 4;

    /// <summary>The dark modules, row by row, without the edge.</summary>
    public static bool[][] Modules(string text)
    {
        var options = new Dictionary<EncodeHintType, object> { [EncodeHintType.MARGIN] = 0, [EncodeHintType.ERROR_CORRECTION] = ErrorCorrectionLevel.L };
        var matrix = new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, options);
        return [.. Enumerable.Range(0, matrix.Height).Select(y => Enumerable.Range(0, matrix.Width).Select(x => matrix[x, y]).ToArray())];
    }

    /// <summary>The dark modules as one path of an SVG picture, a module one unit wide, edge included.</summary>
    public static (string Path, int Side) Drawn(string text)
    {
        bool[][] modules = Modules(text);
        var path = new StringBuilder();
        for (int y = 0; y < modules.Length; y++)
        {
            for (int x = 0; x < modules.Length; x++)
            {
                int from = x;
                while (x < modules.Length && modules[y][x])
                {
                    x++;
                }

                if (x > from)
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{from + Quiet} {y + Quiet}h{x - from}v1h-{x - from}z");
                }
            }
        }

        return (path.ToString(), modules.Length + (2 * Quiet));
    }
}
