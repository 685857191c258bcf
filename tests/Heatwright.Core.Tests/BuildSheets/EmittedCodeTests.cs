using System.Globalization;
using System.Text;
using Heatwright.BuildSheets;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.BuildSheets;

/// <summary>The C that a build sheet emits: compiled without a complaint, run over every count, run in closed loop.</summary>
public sealed class EmittedCodeTests : IDisposable
{
    private static readonly CodeNotes Notes = new("Lens-dew band \\ °C ±1", "abcdef", "2026-11-25", ["run cool-1, 14 points"]);

    private readonly Toolchain tools = new();

    private static CalibrationCode Calibration(double bound = 0.5)
    {
        var physical = new ChainWanted(Thermocouples.TypeK, 450, 10, 50, 3.3, 0.01, 12) { OutputBiasV = 0.015, Share = 0.95 };
        var chain = ChainSearch.FromSeries(physical, "E24").Value;
        var law = SensorCalibration.OfChain(chain, new CalibrationConditions(3.3, 12, 3.1, 25, 0.01, 2), 3);
        var table = CountTable.Fewest(law.AtC, (int)law.FromCount, (int)law.ToCount, bound).Value;
        return new(law, table, Notes, 10, 50);
    }

    private static readonly ControlNumbers Reference = new()
    {
        SetC = 350,
        SampleS = 0.5,
        GainWPerK = 1,
        IntegralS = 24,
        HoldW = 0,
        LoadOhm = 2,
        MostW = 30,
        MostDuty = 1,
        CutoffV = 6,
        StopC = 400,
        IdleS = 3600,
        WaitS = 0.002,
        ReadS = 0.0002,
        LowCount = 3,
        HighCount = 4000,
        RiseS = 20,
        RiseK = 5,
    };

    public void Dispose() => tools.Dispose();

    [Theory]
    [InlineData("gcc", "-std=c99", ".c", "")]
    [InlineData("g++", "-std=c++11", ".cpp", "")]
    [InlineData("avr-gcc", "-std=c99", ".c", "-mmcu=atmega328p")]
    public void Every_file_compiles_without_a_complaint(string compiler, string standard, string ending, string machine)
    {
        SheetFile[] files = [.. Calibration().Files, .. new ControlCode(Reference, Notes).Files, .. BenchCode.Files(3800, 100, 2400, Notes)];
        tools.Write(files.Select(file => file.Name.EndsWith(".h", StringComparison.Ordinal) ? file : file with { Name = Path.ChangeExtension(file.Name, ending) }));
        foreach (var file in files.Where(file => file.Name.EndsWith(".c", StringComparison.Ordinal)))
        {
            tools.Compile(compiler, [standard, "-Os", "-c", .. machine.Length > 0 ? [machine] : Array.Empty<string>()], "out.o", Path.ChangeExtension(file.Name, ending));
            Assert.DoesNotContain("double", file.Text, StringComparison.Ordinal);
            Assert.DoesNotContain("malloc", file.Text, StringComparison.Ordinal);
            Assert.All(file.Text, c => Assert.InRange(c, '\n', '~'));
        }
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(2)]
    public void Both_variants_keep_the_stated_bound_at_every_count(double bound)
    {
        var code = Calibration(bound);
        tools.Write(code.Files);
        File.WriteAllText(Path.Combine(tools.Folder, "main.c"), """
            #include <stdio.h>
            #include "heat_cal.h"
            int main(void)
            {
                uint32_t count;
                for (count = 0u; count < 4096u; count++) {
                    uint8_t state = 0u, state_f = 0u;
                    int16_t c16 = heat_cal_c16((uint16_t)count, HEAT_CAL_COLD_C16, &state);
                    float c = heat_cal_c((float)count, (float)HEAT_CAL_COLD_C16 / 16.0f, &state_f);
                    printf("%d %d %.6f %d\n", (int)c16, (int)state, (double)c, (int)state_f);
                }
                return heat_selftest();
            }
            """);
        tools.Compile("gcc", ["-std=c99", "-O2"], "run", "main.c", "heat_cal.c", "heat_selftest.c");
        var ran = tools.Run(Path.Combine(tools.Folder, "run"), []);
        Assert.Equal(0, ran.Exit); // the self-test, from the law
        double[][] rows = tools.Numbers(ran.Out);

        // Second method: the law written out here, published table function and chain, not the calibration that made the table.
        var chain = ChainSearch.FromSeries(new ChainWanted(Thermocouples.TypeK, 450, 10, 50, 3.3, 0.01, 12) { OutputBiasV = 0.015, Share = 0.95 }, "E24").Value;
        double gain = 1 + (chain.Pair.FeedbackOhm / chain.Pair.GroundOhm);
        int inside = 0;
        for (int count = 0; count < 4096; count++)
        {
            bool low = count < code.Table.At[0], high = count > code.Table.Last;
            Assert.Equal(low ? 1 : high ? 2 : 0, rows[count][1]);
            Assert.Equal(rows[count][1], rows[count][3]);
            if (low || high)
            {
                Assert.Equal(rows[low ? code.Table.At[0] : code.Table.Last][0], rows[count][0]); // the end, never a guess beyond it
                continue;
            }

            double volts = ((count * 3.3 / 4096) - 0.015) / gain;
            double lawC = Bisected(t => Thermocouples.TypeK.EmfV(t) - Thermocouples.TypeK.EmfV(25) - volts);
            Assert.InRange((rows[count][0] / 16) - lawC, -code.Table.WorstK - 1e-6, code.Table.WorstK + 1e-6);
            Assert.InRange(rows[count][2] - lawC, -code.Table.WorstK - 0.04, code.Table.WorstK + 0.04); // half a sixteenth of rounding is left out there
            inside++;
        }

        Assert.True(code.Table.WorstK <= bound && inside > 3000);
    }

    [Fact]
    public void A_warm_cold_end_is_put_right_within_what_the_file_says()
    {
        var code = Calibration();
        tools.Write(code.Files);
        File.WriteAllText(Path.Combine(tools.Folder, "main.c"), """
            #include <stdio.h>
            #include "heat_cal.h"
            int main(void)
            {
                uint16_t count;
                for (count = 500u; count < 3500u; count = (uint16_t)(count + 100u)) {
                    uint8_t state = 0u;
                    printf("%d %d\n", (int)count, (int)heat_cal_c16(count, 45 * 16, &state));
                }
                return 0;
            }
            """);
        tools.Compile("gcc", ["-std=c99"], "run", "main.c", "heat_cal.c");
        var chain = ChainSearch.FromSeries(new ChainWanted(Thermocouples.TypeK, 450, 10, 50, 3.3, 0.01, 12) { OutputBiasV = 0.015, Share = 0.95 }, "E24").Value;
        double gain = 1 + (chain.Pair.FeedbackOhm / chain.Pair.GroundOhm);
        foreach (double[] row in tools.Numbers(tools.Run(Path.Combine(tools.Folder, "run"), []).Out))
        {
            double volts = ((row[0] * 3.3 / 4096) - 0.015) / gain;
            double lawC = Bisected(t => Thermocouples.TypeK.EmfV(t) - Thermocouples.TypeK.EmfV(45) - volts);
            Assert.InRange((row[1] / 16) - lawC, -code.Table.WorstK - code.ColdWorstK - 0.1, code.Table.WorstK + code.ColdWorstK + 0.1);
        }

        Assert.InRange(code.ColdWorstK, 0, 2);
    }

    [Fact]
    public void The_table_on_the_small_controller_gives_the_same_numbers_as_here()
    {
        var code = Calibration();
        tools.Write(code.Files);
        File.WriteAllText(Path.Combine(tools.Folder, "main.c"), """
            #include <avr/io.h>
            #include <avr/interrupt.h>
            #include <avr/sleep.h>
            #include "heat_cal.h"
            static void put(uint8_t c)
            {
                while ((UCSR0A & (1u << UDRE0)) == 0u) { }
                UDR0 = c;
            }
            static void put_number(uint32_t number)
            {
                uint8_t digits[10], n = 0u;
                do { digits[n++] = (uint8_t)('0' + number % 10u); number /= 10u; } while (number > 0u);
                while (n > 0u) { put(digits[--n]); }
                put('\n');
            }
            int main(void)
            {
                uint16_t count;
                uint32_t sum = 0u;
                UCSR0B = (uint8_t)(1u << TXEN0);
                for (count = 0u; count < 4096u; count++) {
                    uint8_t state = 0u;
                    const uint16_t c16 = (uint16_t)heat_cal_c16(count, HEAT_CAL_COLD_C16, &state);
                    sum = sum * 31u + c16 + (uint32_t)state * 65536u;
                }
                put_number(sum);
                put_number(heat_selftest());
                cli();
                sleep_mode();
                return 0;
            }
            """);
        tools.Compile("avr-gcc", ["-std=gnu99", "-Os", "-mmcu=atmega328p"], "run.elf", "main.c", "heat_cal.c", "heat_selftest.c");
        var ran = tools.Run("simavr", ["-m", "atmega328p", "-f", "16000000", "run.elf"]);
        string digits = string.Join(' ', (ran.Out + ran.Error).Split('\n').Select(line => new string([.. line.Where(char.IsAsciiDigit)])));
        uint sum = 0;
        for (int count = 0; count < 4096; count++)
        {
            int at = Math.Clamp(count, code.Table.At[0], code.Table.Last);
            uint state = count < code.Table.At[0] ? 1u : count > code.Table.Last ? 2u : 0u;
            sum = unchecked((sum * 31) + (ushort)(short)code.Table.SixteenthsAt(at) + (state * 65536));
        }

        Assert.Contains(sum.ToString(CultureInfo.InvariantCulture), digits, StringComparison.Ordinal);
    }

    /// <summary>Reference loop of the trade's handbook: plant x[n+1] = α·x[n] + (1 − α)·k(u[n−6] + w[n]), k 30 K/W, τ 180 s, 3 s of delay, set point 350 °C from 25 °C,
    /// a load of 5 W from 600 to 620 s. Expected: overshoot 0, first at 345 °C 85.5 s, droop 4.97448 K, rebound 3.42798 K (independent script); the reading is
    /// rounded to a sixteenth and the duty to 1/1024 here, so tolerances are those steps through the plant.</summary>
    [Theory]
    [InlineData("heat_control_int.c")]
    [InlineData("heat_control_float.c")]
    public void The_emitted_controller_runs_the_reference_loop(string variant)
    {
        double[] y = Loop(Reference, variant);
        Assert.InRange(y.Take(1200).Max() - 350, -1, 0.3);
        Assert.InRange(Array.FindIndex(y, value => value >= 345) * 0.5, 85.5, 87.5); // the duty is cut to 1/1024: 0.1 % of the power, 0.3 K where 1.4 K take 4.5 s
        Assert.InRange(350 - y.Skip(1200).Min(), 4.97448 - 0.15, 4.97448 + 0.15);
        Assert.InRange(y.Skip(1200).Max() - 350, 3.42798 - 0.15, 3.42798 + 0.15);
        Assert.Equal(150.362821, y[60], 0.3);
        Assert.Equal(269.283785, y[120], 0.3);
    }

    [Fact]
    public void Both_variants_give_the_same_course() => Assert.All(
        Loop(Reference, "heat_control_int.c").Zip(Loop(Reference, "heat_control_float.c")), pair => Assert.Equal(pair.First, pair.Second, 0.5));

    [Fact]
    public void As_the_pack_sinks_the_duty_rises_with_the_square()
    {
        // 10.83 W to hold, heater 2 Ω: at 8.2 V 33.62 W full on, duty 329.96/1024; at 6.4 V 20.48 W, duty 541.7/1024 (by hand), both cut to whole parts.
        var quiet = Reference with { HoldW = 10.8333 };
        Assert.Equal(329, Steps(quiet, [(2000, 5600, 8200)])[0][0]);
        Assert.Equal(541, Steps(quiet, [(2000, 5600, 6400)])[0][0]);
    }

    [Theory]
    [InlineData("broken", 4090, 5600, 8200, 2, 3)]
    [InlineData("short", 2, 400, 8200, 3, 3)]
    [InlineData("hot", 2000, 6500, 8200, 4, 1)]
    [InlineData("empty", 2000, 5600, 5900, 5, 3)]
    public void Every_fault_ends_with_the_heater_off_and_stays_off(string what, int count, int c16, int mv, int state, int after)
    {
        var rows = Steps(Reference with { HoldW = 10 }, [(2000, 5600, 8200), .. Enumerable.Repeat((count, c16, mv), 5), (2000, 5600, 8200)]);
        Assert.True(rows[0][0] > 0, what);
        Assert.Equal(state, rows[after][1]);
        Assert.Equal(1, rows[after - 1][1]);
        Assert.All(rows.Skip(after), row => Assert.Equal(0, row[0]));
    }

    [Fact]
    public void Full_power_without_a_rise_and_a_tool_left_alone_both_stop()
    {
        // 20 s of 0.5 s samples at full power with the reading still at 30 °C.
        var rows = Steps(Reference, [.. Enumerable.Repeat((200, 30 * 16, 8200), 60)]);
        Assert.Equal(7, rows[39][1]);
        Assert.Equal(0, rows[40][0]);
        Assert.Equal(1, rows[38][1]);
        rows = Steps(Reference with { IdleS = 10 }, [.. Enumerable.Repeat((2000, 5590, 8200), 30)]);
        Assert.Equal(1, rows[18][1]);
        Assert.Equal(6, rows[19][1]); // the 20th sample ends the tenth second
    }

    [Fact]
    public void The_bench_logger_blanks_its_heater_steps_relays_and_stops_by_itself()
    {
        tools.Write(BenchCode.Files(900, 100, 2000, Notes));
        File.WriteAllText(Path.Combine(tools.Folder, "main.c"), """
            #include <stdio.h>
            #include "bench.h"
            static uint32_t now;
            static uint16_t heater, read_while_on, count;
            static const char *typed = "";
            uint32_t bench_ms(void) { return now; }
            void bench_wait_us(uint16_t us) { (void)us; }
            uint16_t bench_sensor_count(void) { if (heater > 0u) { read_while_on = 1u; } return count; }
            uint16_t bench_supply_count(void) { return 777u; }
            void bench_heater(uint16_t duty) { heater = duty; }
            int16_t bench_get(void) { if (*typed == '\0') { return -1; } { int16_t c = (int16_t)*typed; typed++; return c; } }
            void bench_put(char c) { putchar(c); }
            static void tick(void) { now += 100u; bench_poll(); }
            int main(void)
            {
                int i;
                bench_init();
                count = 100u; tick();
                typed = "d 512\n"; tick();
                count = 850u; tick();
                count = 950u; tick();
                typed = "d 300\n"; count = 200u; tick();
                typed = "r 180 220\n"; tick();
                count = 230u; tick();
                count = 200u; tick();
                count = 170u; tick();
                for (i = 0; i < 60; i++) { tick(); }
                return read_while_on;
            }
            """);
        tools.Compile("gcc", ["-std=c99"], "run", "main.c", "bench.c");
        var ran = tools.Run(Path.Combine(tools.Folder, "run"), []);
        Assert.Equal(0, ran.Exit); // never read with the heater on
        string[] lines = ran.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("ms,counts,duty,supply", lines[0]);
        Assert.Equal(["100,100,0,777", "200,100,512,777", "300,850,512,777", "400,950,0,777", "500,200,300,777", "600,200,300,777", "700,230,0,777", "800,200,0,777", "900,170,300,777"], lines[1..10]);
        Assert.Contains("5600,170,300,777", lines);
        Assert.Contains("5800,170,0,777", lines); // 5 s after the last word the link counts as lost
    }

    private double[] Loop(ControlNumbers numbers, string variant)
    {
        tools.Write(new ControlCode(numbers, Notes).Files);
        File.WriteAllText(Path.Combine(tools.Folder, "main.c"), """
            #include <stdio.h>
            #include <math.h>
            #include "heat_control.h"
            int main(void)
            {
                heat_control control;
                double x = 0.0, delayed[6] = { 0.0, 0.0, 0.0, 0.0, 0.0, 0.0 };
                const double alpha = exp(-0.5 / 180.0), volts = 8.2;
                int n;
                heat_init(&control);
                heat_start(&control);
                for (n = 0; n < 1500; n++) {
                    const double y = 25.0 + x;
                    const double w = n >= 1200 && n < 1240 ? -5.0 : 0.0;
                    uint16_t duty;
                    heat_touched(&control);
                    duty = heat_step(&control, 2000u, (int16_t)floor(y * 16.0 + 0.5), (uint16_t)(volts * 1000.0));
                    printf("%.6f\n", y);
                    x = alpha * x + (1.0 - alpha) * 30.0 * (delayed[n % 6] + w);
                    delayed[n % 6] = (double)duty / 1024.0 * volts * volts / 2.0;
                }
                return control.state == HEAT_RUNS ? 0 : 1;
            }
            """);
        tools.Compile("gcc", ["-std=c99", "-O1", "-Wno-float-conversion"], variant + ".run", "main.c", variant, "-lm");
        var ran = tools.Run(Path.Combine(tools.Folder, variant + ".run"), []);
        Assert.Equal(0, ran.Exit);
        return [.. tools.Numbers(ran.Out).Select(row => row[0])];
    }

    private double[][] Steps(ControlNumbers numbers, (int Count, int C16, int Mv)[] samples)
    {
        tools.Write(new ControlCode(numbers, Notes).Files);
        File.WriteAllText(Path.Combine(tools.Folder, "main.c"), """
            #include <stdio.h>
            #include "heat_control.h"
            int main(void)
            {
                heat_control control;
                int count, c16, mv;
                heat_init(&control);
                heat_start(&control);
                while (scanf("%d %d %d", &count, &c16, &mv) == 3) {
                    const int duty = heat_step(&control, (uint16_t)count, (int16_t)c16, (uint16_t)mv);
                    printf("%d %d\n", duty, (int)control.state);
                }
                return 0;
            }
            """);
        tools.Compile("gcc", ["-std=c99"], "steps", "main.c", "heat_control_int.c");
        var input = new StringBuilder();
        foreach (var (count, c16, mv) in samples)
        {
            input.Append(CultureInfo.InvariantCulture, $"{count} {c16} {mv}\n");
        }

        return tools.Numbers(tools.Run(Path.Combine(tools.Folder, "steps"), [], input.ToString()).Out);
    }

    private static double Bisected(Func<double, double> f)
    {
        double low = -100, high = 1000;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = f(middle) > 0 ? (low, middle) : (middle, high);
        }

        return low;
    }
}
