using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Heatwright.Numerics;

/// <summary>Long rows of numbers, four at a time: every machine adds in the same order, to the same digits.</summary>
internal static class Lanes
{
    /// <summary>Sum of products, in sixteen sums side by side: one sum waits for itself at every step.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        b = b[..a.Length];
        var fours = MemoryMarshal.Cast<double, Vector256<double>>(a);
        var with = MemoryMarshal.Cast<double, Vector256<double>>(b);
        Vector256<double> one = default, two = default, three = default, four = default;
        int i = 0;
        for (; i + 3 < fours.Length; i += 4)
        {
            one += fours[i] * with[i];
            two += fours[i + 1] * with[i + 1];
            three += fours[i + 2] * with[i + 2];
            four += fours[i + 3] * with[i + 3];
        }

        for (; i < fours.Length; i++)
        {
            one += fours[i] * with[i];
        }

        double sum = Vector256.Sum(one + two + (three + four));
        for (int k = 4 * fours.Length; k < a.Length; k++)
        {
            sum += a[k] * b[k];
        }

        return sum;
    }

    /// <summary>Adds a multiple of one row to another.</summary>
    public static void AddScaled(Span<double> onto, double factor, ReadOnlySpan<double> row)
    {
        onto = onto[..row.Length];
        var fours = MemoryMarshal.Cast<double, Vector256<double>>(row);
        var sums = MemoryMarshal.Cast<double, Vector256<double>>(onto);
        for (int i = 0; i < fours.Length; i++)
        {
            sums[i] += factor * fours[i];
        }

        for (int i = 4 * fours.Length; i < row.Length; i++)
        {
            onto[i] += factor * row[i];
        }
    }

    /// <summary>Writes a row divided by a number.</summary>
    public static void Divide(ReadOnlySpan<double> row, double by, Span<double> into)
    {
        into = into[..row.Length];
        var fours = MemoryMarshal.Cast<double, Vector256<double>>(row);
        var parts = MemoryMarshal.Cast<double, Vector256<double>>(into);
        var divisor = Vector256.Create(by);
        for (int i = 0; i < fours.Length; i++)
        {
            parts[i] = fours[i] / divisor;
        }

        for (int i = 4 * fours.Length; i < row.Length; i++)
        {
            into[i] = row[i] / by;
        }
    }

    /// <summary>Largest size of any, not a number where one is none.</summary>
    public static double Largest(ReadOnlySpan<double> row)
    {
        var fours = MemoryMarshal.Cast<double, Vector256<double>>(row);
        var most = Vector256<double>.Zero;
        for (int i = 0; i < fours.Length; i++)
        {
            most = Vector256.Max(most, Vector256.Abs(fours[i]));
        }

        double largest = Math.Max(Math.Max(most[0], most[1]), Math.Max(most[2], most[3]));
        for (int i = 4 * fours.Length; i < row.Length; i++)
        {
            largest = Math.Max(largest, Math.Abs(row[i]));
        }

        return largest;
    }
}
