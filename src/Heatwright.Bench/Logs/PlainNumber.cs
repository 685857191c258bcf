using System.Globalization;

namespace Heatwright.Logs;

/// <summary>Reads a bare number from bytes, correctly rounded, with a given decimal mark and nothing else allowed.</summary>
internal static class PlainNumber
{
    private static readonly double[] PowersOfTen =
    [
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
    ];

    /// <remarks>Up to 15 digits and powers of ten up to 22 are exact in a double, so one multiplication or division rounds once, as
    /// it should (W. D. Clinger, How to read floating point numbers accurately, 1990). Everything else goes the long way.</remarks>
    public static bool TryRead(ReadOnlySpan<byte> cell, byte mark, out double value)
    {
        value = 0;
        int at = 0;
        bool negative = cell.Length > 0 && cell[0] == '-';
        if (negative || (cell.Length > 0 && cell[0] == '+'))
        {
            at++;
        }

        ulong digits = 0;
        int count = 0, scale = 0;
        int whole = Digits(cell, ref at, ref digits, ref count);
        int fraction = 0;
        if (at < cell.Length && cell[at] == mark && mark != 0)
        {
            at++;
            fraction = Digits(cell, ref at, ref digits, ref count);
            scale = -fraction;
        }

        if (whole + fraction == 0 || (at < cell.Length && !Exponent(cell, ref at, ref scale)) || at != cell.Length)
        {
            return false;
        }

        if (count > 18 || digits > (1UL << 53) || scale is > 22 or < -22)
        {
            return TheLongWay(cell, mark, out value);
        }

        value = scale < 0 ? digits / PowersOfTen[-scale] : digits * PowersOfTen[scale];
        value = negative ? -value : value;
        return true;
    }

    private static int Digits(ReadOnlySpan<byte> cell, ref int at, ref ulong digits, ref int count)
    {
        int start = at;
        while (at < cell.Length)
        {
            uint digit = (uint)cell[at] - '0';
            if (digit > 9)
            {
                break;
            }

            digits = (digits * 10) + digit;
            count += count > 0 || digit > 0 ? 1 : 0;
            at++;
        }

        return at - start;
    }

    private static bool Exponent(ReadOnlySpan<byte> cell, ref int at, ref int scale)
    {
        if ((cell[at] | 0x20) != 'e')
        {
            return false;
        }

        at++;
        bool negative = at < cell.Length && cell[at] == '-';
        if (negative || (at < cell.Length && cell[at] == '+'))
        {
            at++;
        }

        int exponent = 0, start = at;
        while (at < cell.Length && (uint)cell[at] - '0' <= 9)
        {
            exponent = Math.Min((exponent * 10) + cell[at++] - '0', 100_000);
        }

        scale += negative ? -exponent : exponent;
        return at > start;
    }

    private static bool TheLongWay(ReadOnlySpan<byte> cell, byte mark, out double value)
    {
        if (mark == '.' || cell.IndexOf(mark) < 0)
        {
            return double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
        }

        Span<byte> pointed = cell.Length <= 256 ? stackalloc byte[cell.Length] : new byte[cell.Length];
        cell.CopyTo(pointed);
        pointed.Replace(mark, (byte)'.');
        return double.TryParse(pointed, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
    }
}
