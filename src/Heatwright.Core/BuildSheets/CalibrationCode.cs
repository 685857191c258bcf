using System.Globalization;
using System.Text;
using Heatwright.Physics;

namespace Heatwright.BuildSheets;

/// <summary>Counts to degrees as C for a small controller: whole numbers only, and the same in single precision.</summary>
/// <remarks>Compiles as C99 and as C++11, allocates nothing, uses no double. Checked: EmittedCodeTests compile it, run it over every count, and compare with the law.</remarks>
public sealed class CalibrationCode
{
    private readonly SensorCalibration calibration;
    private readonly CodeNotes notes;

    /// <summary>Code of a calibration.</summary>
    /// <param name="calibration">The calibration on the prototype.</param>
    /// <param name="table">Its table.</param>
    /// <param name="notes">For the head of the files.</param>
    /// <param name="coldLeastC">Coldest cold end.</param>
    /// <param name="coldMostC">Hottest cold end.</param>
    public CalibrationCode(SensorCalibration calibration, CountTable table, CodeNotes notes, double coldLeastC, double coldMostC)
    {
        (this.calibration, Table, this.notes) = (calibration, table, notes);
        var law = calibration.Physical;
        double slope = law is null ? 0 : law.CountsPerV * (law.Curve.EmfV(coldMostC) - law.Curve.EmfV(coldLeastC)) / (coldMostC - coldLeastC);

        // Counts a kelvin of the cold end, times 4096, times 1/16: the cold end arrives in sixteenths of a degree.
        ColdQ16 = (int)Math.Round(slope * 4096);
        ColdC16 = (int)Math.Round(calibration.Under.ColdC * 16);
        ColdWorstK = law is null ? 0 : ColdMiss(law, coldLeastC, coldMostC);
    }

    /// <summary>The table.</summary>
    public CountTable Table { get; }

    /// <summary>Counts per sixteenth of a degree of the cold end, times 65536.</summary>
    public int ColdQ16 { get; }

    /// <summary>Cold end of the table, sixteenths of a degree.</summary>
    public int ColdC16 { get; }

    /// <summary>Most that the straight cold-end correction adds, K, over the range of cold ends and of the table.</summary>
    public double ColdWorstK { get; }

    /// <summary>Pairs of count and degrees for the self-test, from the law and not from the table.</summary>
    public IReadOnlyList<(int Count, double C)> TestPoints =>
        [.. Enumerable.Range(0, 5).Select(i => Table.At[0] + ((Table.Last - Table.At[0]) * ((2 * i) + 1) / 10)).Select(count => (count, calibration.AtC(count)))];

    /// <summary>All files: header, code, self-test.</summary>
    public IReadOnlyList<SheetFile> Files => [new("heat_cal.h", Header()), new("heat_cal.c", Code()), new("heat_selftest.c", SelfTest())];

    /// <summary>The correction as the controller adds it, in counts.</summary>
    public int ColdCounts(int coldC16) => (int)((((long)(coldC16 - ColdC16) * ColdQ16) + ((long)16384 << 16) + 32768) >> 16) - 16384;

    private static string Number(double value, string format = "0.###") => value.ToString(format, CultureInfo.InvariantCulture);

    private double ColdMiss(PhysicalCalibration law, double least, double most)
    {
        double worst = 0;
        for (double cold = least; cold <= most; cold++)
        {
            var there = law with { ColdC = cold };
            foreach (int count in new[] { Table.At[0], (Table.At[0] + Table.Last) / 2, Table.Last })
            {
                double corrected = count + ColdCounts((int)Math.Round(cold * 16));
                if (corrected >= calibration.FromCount && corrected <= calibration.ToCount)
                {
                    worst = Math.Max(worst, Math.Abs(calibration.AtC(corrected) - there.AtC(count)));
                }
            }
        }

        return worst;
    }

    private string Header() => notes.Head("counts of the converter to degrees", Facts()) + $$"""
        #ifndef HEAT_CAL_H
        #define HEAT_CAL_H

        #include <stdint.h>

        #ifdef __cplusplus
        extern "C" {
        #endif

        #define HEAT_CAL_FIRST_COUNT {{Table.At[0]}}u
        #define HEAT_CAL_LAST_COUNT  {{Table.Last}}u
        #define HEAT_CAL_COLD_C16    ({{ColdC16}})  /* cold end of the table, 1/16 degC */

        enum { HEAT_CAL_OK = 0, HEAT_CAL_LOW = 1, HEAT_CAL_HIGH = 2 };

        /* Degrees in 1/16 degC. Outside the table nothing is guessed: the end is returned and *state says so. */
        int16_t heat_cal_c16(uint16_t count, int16_t cold_c16, uint8_t *state);

        #ifndef HEAT_NO_FLOAT
        /* The same in single precision, degC. */
        float heat_cal_c(float count, float cold_c, uint8_t *state);
        #endif

        /* 0: every test point is within the stated miss. Else the number of the first point that is not. */
        uint8_t heat_selftest(void);

        #ifdef __cplusplus
        }
        #endif

        #endif

        """.ReplaceLineEndings("\n");

    private IEnumerable<string> Facts() =>
    [
        calibration.Words,
        string.Create(CultureInfo.InvariantCulture, $"Range {Table.At[0]} to {Table.Last} counts, {calibration.AtC(Table.At[0]):0.#} to {calibration.AtC(Table.Last):0.#} °C with the cold end at {calibration.Under.ColdC:0.#} °C."),
        string.Create(CultureInfo.InvariantCulture, $"Table misses its law by at most {Table.WorstK:0.000} K at every count; the cold-end correction adds at most {ColdWorstK:0.00} K."),
        string.Create(CultureInfo.InvariantCulture, $"Taken for reference {calibration.Under.ReferenceV:0.###} V, {calibration.Under.Bits} bits, amplifier up to {calibration.Under.CeilingV:0.###} V. Under others the degrees are wrong."),
    ];

    private string Code()
    {
        var text = new StringBuilder(notes.Head("counts of the converter to degrees", Facts()));
        int n = Table.At.Count;
        text.Append("#include \"heat_cal.h\"\n\n");
        text.Append(CultureInfo.InvariantCulture, $"#define PIECES {n}u\n\n");
        text.Append(Array("uint16_t", "at_count", Table.At)).Append(Array("int16_t", "start_c16", Table.Starts)).Append(Array("int32_t", "slope_q12", Table.Slopes));
        text.Append($$"""

            static uint8_t piece_of(uint16_t count)
            {
                uint8_t piece = 0u;
                while ((uint8_t)(piece + 1u) < PIECES && count >= at_count[piece + 1u]) {
                    piece++;
                }
                return piece;
            }

            int16_t heat_cal_c16(uint16_t count, int16_t cold_c16, uint8_t *state)
            {
                /* The bias of 16384 counts keeps the number positive while it is shifted. */
                const int32_t cold = (int32_t)(((((int64_t)cold_c16 - HEAT_CAL_COLD_C16) * {{ColdQ16}}) + ((int64_t)16384 << 16) + 32768) >> 16) - 16384;
                int32_t at = (int32_t)count + cold;
                uint8_t piece;
                *state = HEAT_CAL_OK;
                if (at < (int32_t)HEAT_CAL_FIRST_COUNT) {
                    at = (int32_t)HEAT_CAL_FIRST_COUNT;
                    *state = HEAT_CAL_LOW;
                }
                if (at > (int32_t)HEAT_CAL_LAST_COUNT) {
                    at = (int32_t)HEAT_CAL_LAST_COUNT;
                    *state = HEAT_CAL_HIGH;
                }
                piece = piece_of((uint16_t)at);
                return (int16_t)(start_c16[piece] + (((at - (int32_t)at_count[piece]) * slope_q12[piece] + 2048) >> 12));
            }

            #ifndef HEAT_NO_FLOAT
            float heat_cal_c(float count, float cold_c, uint8_t *state)
            {
                float at = count + (cold_c - {{Single(calibration.Under.ColdC)}}) * {{Single(ColdQ16 / 4096.0)}};
                uint8_t piece;
                *state = HEAT_CAL_OK;
                if (!(at >= (float)HEAT_CAL_FIRST_COUNT)) {
                    at = (float)HEAT_CAL_FIRST_COUNT;
                    *state = HEAT_CAL_LOW;
                }
                if (at > (float)HEAT_CAL_LAST_COUNT) {
                    at = (float)HEAT_CAL_LAST_COUNT;
                    *state = HEAT_CAL_HIGH;
                }
                piece = piece_of((uint16_t)at);
                return ((float)start_c16[piece] + (at - (float)at_count[piece]) * ((float)slope_q12[piece] * (1.0f / 4096.0f))) * (1.0f / 16.0f);
            }
            #endif

            """.ReplaceLineEndings("\n"));
        return text.ToString();
    }

    private string SelfTest()
    {
        int bound = (int)Math.Ceiling((Table.WorstK * 16) + 0.5);
        string points = string.Join(", ", TestPoints.Select(point => string.Create(CultureInfo.InvariantCulture, $"{{{point.Count}u, {Math.Round(point.C * 16):0}}}")));
        return notes.Head("self-test of the table, from the law and not from the table", TestPoints.Select(point => string.Create(CultureInfo.InvariantCulture, $"count {point.Count} is {point.C:0.00} °C"))) + $$"""
            #include "heat_cal.h"

            typedef struct { uint16_t count; int16_t c16; } heat_test_point;

            static const heat_test_point test_points[] = { {{points}} };

            uint8_t heat_selftest(void)
            {
                const uint8_t all = (uint8_t)(sizeof test_points / sizeof test_points[0]);
                uint8_t i;
                for (i = 0u; i < all; i++) {
                    uint8_t state = HEAT_CAL_OK;
                    const int16_t got = heat_cal_c16(test_points[i].count, HEAT_CAL_COLD_C16, &state);
                    const int16_t miss = (int16_t)(got - test_points[i].c16);
                    if (state != HEAT_CAL_OK || miss > {{Number(bound)}} || miss < -{{Number(bound)}}) {
                        return (uint8_t)(i + 1u);
                    }
                }
                return 0u;
            }

            """.ReplaceLineEndings("\n");
    }

    private static string Array(string type, string name, IReadOnlyList<int> values) =>
        $"static const {type} {name}[PIECES] = {{ {string.Join(", ", values.Select(value => value.ToString(CultureInfo.InvariantCulture) + (type == "uint16_t" ? "u" : "")))} }};\n";

    /// <summary>A number as C reads it in single precision.</summary>
    internal static string Single(double value)
    {
        string text = ((float)value).ToString("R", CultureInfo.InvariantCulture);
        string full = text.Contains('.', StringComparison.Ordinal) || text.Contains('E', StringComparison.Ordinal) ? text : text + ".0";
        return value < 0 ? $"({full}f)" : full + "f";
    }
}
