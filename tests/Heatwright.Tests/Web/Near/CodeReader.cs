namespace Heatwright.Tests.Web.Near;

/// <summary>Reads a small QR code the long way round, after ISO/IEC 18004 (2015) from memory: format information (7.9), masks (7.8.2), placement (7.7.3), one block of codewords (table 9, versions 1 to 5 at level L), byte mode (7.4.5).</summary>
internal static class CodeReader
{
    /// <summary>Codewords in all, and those of them for correction.</summary>
    private static readonly (int All, int Correction)[] Blocks = [(26, 7), (44, 10), (70, 15), (100, 20), (134, 26)];

    public static string Text(bool[][] dark)
    {
        int side = dark.Length, version = (side - 17) / 4;
        Assert.InRange(version, 1, 5);
        var (level, mask) = Format(dark);
        Assert.Equal(1, level); // 01: level L
        List<bool> bits = [];
        bool up = true;
        for (int right = side - 1; right > 0; right -= 2, up = !up)
        {
            right -= right == 6 ? 1 : 0; // the column of the timing pattern is passed over
            for (int step = 0; step < side; step++)
            {
                int row = up ? side - 1 - step : step;
                foreach (int column in new[] { right, right - 1 })
                {
                    if (!IsFixed(row, column, side, version))
                    {
                        bits.Add(dark[row][column] ^ Flips(mask, row, column));
                    }
                }
            }
        }

        var (all, correction) = Blocks[version - 1];
        int[] words = [.. Enumerable.Range(0, all).Select(i => Number(bits, 8 * i, 8))];
        // A whole code leaves no remainder: its polynomial is nought at each of the generator's roots.
        Assert.All(Enumerable.Range(0, correction), root => Assert.Equal(0, words.Aggregate(0, (sum, word) => Times(sum, Power(root)) ^ word)));
        Assert.Equal(0b0100, Number(bits, 0, 4));
        return new string([.. Enumerable.Range(0, Number(bits, 4, 8)).Select(i => (char)Number(bits, 12 + (8 * i), 8))]);
    }

    private static (int Level, int Mask) Format(bool[][] dark)
    {
        (int Row, int Column)[] places = [(8, 0), (8, 1), (8, 2), (8, 3), (8, 4), (8, 5), (8, 7), (8, 8), (7, 8), (5, 8), (4, 8), (3, 8), (2, 8), (1, 8), (0, 8)];
        int read = places.Aggregate(0, (sum, place) => (sum << 1) | (dark[place.Row][place.Column] ? 1 : 0)) ^ 0b101010000010010;
        return (read >> 13, (read >> 10) & 7);
    }

    private static bool IsFixed(int row, int column, int side, int version) =>
        (row < 9 && column < 9) || (row < 9 && column >= side - 8) || (row >= side - 8 && column < 9) || row == 6 || column == 6
        || (version > 1 && Math.Abs(row - (side - 7)) <= 2 && Math.Abs(column - (side - 7)) <= 2);

    private static bool Flips(int mask, int i, int j) => mask switch
    {
        0 => (i + j) % 2 == 0,
        1 => i % 2 == 0,
        2 => j % 3 == 0,
        3 => (i + j) % 3 == 0,
        4 => ((i / 2) + (j / 3)) % 2 == 0,
        5 => (i * j % 2) + (i * j % 3) == 0,
        6 => ((i * j % 2) + (i * j % 3)) % 2 == 0,
        _ => (((i + j) % 2) + (i * j % 3)) % 2 == 0,
    };

    private static int Number(List<bool> bits, int from, int count) => bits.Skip(from).Take(count).Aggregate(0, (sum, bit) => (sum << 1) | (bit ? 1 : 0));

    private static int Power(int exponent) => Enumerable.Range(0, exponent).Aggregate(1, (value, _) => Times(value, 2));

    /// <summary>In the field of 256 with x⁸ + x⁴ + x³ + x² + 1.</summary>
    private static int Times(int a, int b)
    {
        int product = 0;
        for (; b > 0; b >>= 1, a = (a << 1) ^ (a > 127 ? 0b100011101 : 0))
        {
            product ^= (b & 1) == 1 ? a : 0;
        }

        return product;
    }
}
