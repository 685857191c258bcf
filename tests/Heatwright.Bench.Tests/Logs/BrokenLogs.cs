using System.Text;
using CsCheck;

namespace Heatwright.Tests.Logs;

/// <summary>Logs broken at random: bytes changed, cut, doubled, spliced with other logs and with the marks that readers stumble on.</summary>
internal static class BrokenLogs
{
    private static readonly byte[][] Pieces =
    [
        .. new[]
        {
            ";", ",", "\t", "|", " ", "\n", "\r\n", "\r", "\"", "\"\"", "#", "sep=;\n", "1,234", "1.234,5", "9.9E37", "OL", "nan", "-9999", "23:24:14.141 -> ", "tip:231.5,set:240\n", "2024-03-01T12:00:00/PT1M",
            "03/04/2024", "12:00:00 PM", "99999999999999999999999999", "1e999", "-", "(", "[", "]", "°C", "µV", "\0", "\uFEFF", "/", "31/02/2024", "00:60:61", "0000-00-00", "Interval: 0 s\n", "9999-12-31T24:00:00", "=", ":",
        }.Select(Encoding.UTF8.GetBytes),
        [0xFF, 0xFE],
        [0xFE, 0xFF],
        [0xC3],
        [0xB0],
    ];

    public static Gen<byte[]> From(IReadOnlyList<byte[]> samples, int longest) =>
        from sample in Gen.Int[0, samples.Count - 1]
        from start in Gen.Int[0, Math.Max(0, samples[sample].Length - 1)]
        from length in Gen.Int[1, longest]
        from edits in Gen.Select(Gen.Int[0, 3], Gen.Int[0, longest], Gen.Int[0, Pieces.Length - 1], Gen.Byte).List[0, 12]
        select Break(samples[sample].Skip(start % 3 == 0 ? 0 : start).Take(length), edits);

    private static byte[] Break(IEnumerable<byte> bytes, List<(int Kind, int At, int Piece, byte Value)> edits)
    {
        var broken = bytes.ToList();
        foreach (var (kind, where, piece, value) in edits)
        {
            int at = broken.Count == 0 ? 0 : where % broken.Count;
            switch (kind)
            {
                case 0 when broken.Count > 0:
                    broken[at] = value;
                    break;
                case 1 when broken.Count > 0:
                    broken.RemoveRange(at, Math.Min(broken.Count - at, 1 + (value % 40)));
                    break;
                case 2:
                    broken.InsertRange(at, Pieces[piece]);
                    break;
                default:
                    broken.InsertRange(at, broken.Skip(at).Take(value).ToList());
                    break;
            }
        }

        return [.. broken];
    }
}
