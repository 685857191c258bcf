using System.Globalization;

namespace Heatwright.BuildSheets;

/// <summary>The controller as C: PI with anti-windup, power limit, feed-forward on the pack's volts, and stops that all end with the heater off.</summary>
/// <remarks>Order of a sample: read, checks, error, sum, limits, integral, duty. The integral stands still while the output is at a limit and the error pushes
/// further. Checked: EmittedCodeTests run it in closed loop.</remarks>
public sealed class ControlCode(ControlNumbers numbers, CodeNotes notes)
{
    /// <summary>Duty is told in parts of this.</summary>
    public const int FullDuty = 1024;

    /// <summary>Header and both variants: build one of the two C files.</summary>
    public IReadOnlyList<SheetFile> Files => [new("heat_control.h", Header()), new("heat_control_int.c", Code(floats: false)), new("heat_control_float.c", Code(floats: true))];

    private static string Whole(double value) => Math.Round(value).ToString("0", CultureInfo.InvariantCulture);

    private string Header() => notes.Head("heater control", "Build heat_control_int.c (whole numbers) or heat_control_float.c (single precision), not both.", "Every stop latches: the heater stays off until heat_start() is called.",
        "An independent cut-out and a watchdog must stand behind this code: software alone is not a safeguard.") + $$"""
        #ifndef HEAT_CONTROL_H
        #define HEAT_CONTROL_H

        #include <stdint.h>

        #ifdef __cplusplus
        extern "C" {
        #endif

        #define HEAT_SET_C16      {{Whole(numbers.SetC * 16)}}   /* set point, 1/16 degC */
        #define HEAT_SAMPLE_MS    {{Whole(numbers.SampleS * 1000)}}u
        #define HEAT_WAIT_US      {{Whole(Math.Ceiling(numbers.WaitS * 1e6))}}u   /* heater off, then wait this long before reading */
        #define HEAT_READ_US      {{Whole(Math.Ceiling(numbers.ReadS * 1e6))}}u
        #define HEAT_FULL_DUTY    {{FullDuty}}u
        #define HEAT_MOST_DUTY    {{Whole(Math.Floor(numbers.MostDuty * FullDuty))}}u
        #define HEAT_CUTOFF_MV    {{Whole(numbers.CutoffV * 1000)}}u
        #define HEAT_STOP_C16     {{Whole(numbers.StopC * 16)}}
        #define HEAT_IDLE_S       {{Whole(numbers.IdleS)}}u
        #define HEAT_LOW_COUNT    {{numbers.LowCount}}u
        #define HEAT_HIGH_COUNT   {{numbers.HighCount}}u
        #define HEAT_RISE_SAMPLES {{Whole(Math.Ceiling(numbers.RiseS / numbers.SampleS))}}u
        #define HEAT_RISE_C16     {{Whole(numbers.RiseK * 16)}}
        #define HEAT_BAD_SAMPLES  3u    /* so many bad samples in a row before it stops; the heater is off in the meantime */

        enum {
            HEAT_OFF = 0,
            HEAT_RUNS = 1,
            HEAT_STOP_SENSOR_BROKEN = 2,
            HEAT_STOP_SENSOR_SHORT = 3,
            HEAT_STOP_TOO_HOT = 4,
            HEAT_STOP_EMPTY = 5,
            HEAT_STOP_IDLE = 6,
            HEAT_STOP_NO_RISE = 7
        };

        typedef struct {
            uint8_t state;
            uint8_t bad;
            uint8_t low;
            int16_t rise_from_c16;
            uint16_t rise_samples;
            uint32_t idle_ms;
            int32_t integral_uw;   /* microwatt, whole-number variant */
            float integral_w;      /* watt, single-precision variant */
        } heat_control;

        void heat_init(heat_control *control);
        void heat_start(heat_control *control);
        void heat_stop(heat_control *control);
        void heat_touched(heat_control *control);   /* work, motion or a key: not idle */

        /* One sample. count: raw reading; c16: degrees from the table; pack_mv: pack under load in this frame. Returns the duty of the next frame. */
        uint16_t heat_step(heat_control *control, uint16_t count, int16_t c16, uint16_t pack_mv);

        #ifdef __cplusplus
        }
        #endif

        #endif

        """.ReplaceLineEndings("\n");

    private string Code(bool floats) => notes.Head(floats ? "heater control in single precision" : "heater control in whole numbers") + $$"""
        #include "heat_control.h"

        void heat_init(heat_control *control)
        {
            control->state = HEAT_OFF;
            control->bad = 0u;
            control->low = 0u;
            control->rise_from_c16 = 0;
            control->rise_samples = 0u;
            control->idle_ms = 0u;
            control->integral_uw = 0;
            control->integral_w = 0.0f;
        }

        void heat_start(heat_control *control)
        {
            heat_init(control);
            control->state = HEAT_RUNS;
            control->integral_uw = {{Whole(Math.Clamp(numbers.HoldW, 0, numbers.MostW) * 1e6)}};
            control->integral_w = {{CalibrationCode.Single(Math.Clamp(numbers.HoldW, 0, numbers.MostW))}};
        }

        void heat_stop(heat_control *control)
        {
            control->state = HEAT_OFF;
        }

        void heat_touched(heat_control *control)
        {
            control->idle_ms = 0u;
        }

        static uint16_t stop(heat_control *control, uint8_t why)
        {
            control->state = why;
            return 0u;
        }

        uint16_t heat_step(heat_control *control, uint16_t count, int16_t c16, uint16_t pack_mv)
        {
            if (control->state != HEAT_RUNS) {
                return 0u;
            }
            if (count >= HEAT_HIGH_COUNT || count <= HEAT_LOW_COUNT) {
                control->bad++;
                if (control->bad >= HEAT_BAD_SAMPLES) {
                    return stop(control, count >= HEAT_HIGH_COUNT ? (uint8_t)HEAT_STOP_SENSOR_BROKEN : (uint8_t)HEAT_STOP_SENSOR_SHORT);
                }
                return 0u;
            }
            control->bad = 0u;
            if (c16 >= HEAT_STOP_C16) {
                return stop(control, HEAT_STOP_TOO_HOT);
            }
            if (pack_mv < HEAT_CUTOFF_MV) {
                control->low++;
                if (control->low >= HEAT_BAD_SAMPLES) {
                    return stop(control, HEAT_STOP_EMPTY);
                }
            } else {
                control->low = 0u;
            }
            control->idle_ms += HEAT_SAMPLE_MS;
            if (control->idle_ms / 1000u >= HEAT_IDLE_S) {
                return stop(control, HEAT_STOP_IDLE);
            }
            {
        {{(floats ? Floats() : Wholes())}}
                if (duty >= HEAT_MOST_DUTY) {
                    duty = HEAT_MOST_DUTY;
                }
                /* All the power there is and still no rise: the sensor is shorted, or does not sit on the tip. */
                if (limited != 0u && error > 0) {
                    if (control->rise_samples == 0u) {
                        control->rise_from_c16 = c16;
                    }
                    control->rise_samples++;
                    if (control->rise_samples >= HEAT_RISE_SAMPLES) {
                        if ((int32_t)c16 - control->rise_from_c16 < HEAT_RISE_C16) {
                            return stop(control, HEAT_STOP_NO_RISE);
                        }
                        control->rise_samples = 0u;
                    }
                } else {
                    control->rise_samples = 0u;
                }
                return (uint16_t)duty;
            }
        }

        """.ReplaceLineEndings("\n");

    private string Wholes()
    {
        double perSample = numbers.GainWPerK * numbers.SampleS / numbers.IntegralS / 16 * 1e6;
        return Indented($$"""
            /* Watts in microwatt; the most is what the pack gives at the volts read, or the stated limit. */
            const int32_t error = (int32_t)HEAT_SET_C16 - (int32_t)c16;
            const uint32_t on_mw = (uint32_t)((uint64_t)pack_mv * pack_mv / {{Whole(numbers.LoadOhm * 1000)}}u);
            uint32_t most_mw = (uint32_t)((uint64_t)on_mw * HEAT_MOST_DUTY / HEAT_FULL_DUTY);
            uint32_t duty;
            uint8_t limited;
            int64_t want_uw;
            int32_t out_uw;
            if (most_mw > {{Whole(numbers.MostW * 1000)}}u) {
                most_mw = {{Whole(numbers.MostW * 1000)}}u;
            }
            want_uw = (int64_t)error * {{Whole(numbers.GainWPerK / 16 * 1e6)}} + control->integral_uw;
            out_uw = want_uw < 0 ? 0 : (want_uw > (int64_t)most_mw * 1000 ? (int32_t)(most_mw * 1000u) : (int32_t)want_uw);
            limited = (uint8_t)(want_uw > (int64_t)most_mw * 1000);
            if (!((limited != 0u && error > 0) || (want_uw < 0 && error < 0))) {
                control->integral_uw += (int32_t)(((int64_t)error * {{Whole(perSample * 256)}}) / 256);
            }
            duty = on_mw > 0u ? (uint32_t)(((uint64_t)(uint32_t)out_uw * HEAT_FULL_DUTY) / ((uint64_t)on_mw * 1000u)) : 0u;
            """);
    }

    private string Floats() => Indented($$"""
        /* Watts; the most is what the pack gives at the volts read, or the stated limit. */
        const int32_t error = (int32_t)HEAT_SET_C16 - (int32_t)c16;
        const float error_k = (float)error * (1.0f / 16.0f);
        const float volts = (float)pack_mv * 0.001f;
        const float on_w = volts * volts * {{CalibrationCode.Single(1 / numbers.LoadOhm)}};
        float most_w = on_w * ((float)HEAT_MOST_DUTY / (float)HEAT_FULL_DUTY);
        float want_w;
        float out_w;
        uint32_t duty;
        uint8_t limited;
        if (most_w > {{CalibrationCode.Single(numbers.MostW)}}) {
            most_w = {{CalibrationCode.Single(numbers.MostW)}};
        }
        want_w = error_k * {{CalibrationCode.Single(numbers.GainWPerK)}} + control->integral_w;
        out_w = want_w < 0.0f ? 0.0f : (want_w > most_w ? most_w : want_w);
        limited = (uint8_t)(want_w > most_w);
        if (!((limited != 0u && error > 0) || (want_w < 0.0f && error < 0))) {
            control->integral_w += error_k * {{CalibrationCode.Single(numbers.GainWPerK * numbers.SampleS / numbers.IntegralS)}};
        }
        duty = on_w > 0.0f ? (uint32_t)(out_w / on_w * (float)HEAT_FULL_DUTY) : 0u;
        """);

    private static string Indented(string text) => string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').Select(line => line.Length == 0 ? line : "        " + line));
}
