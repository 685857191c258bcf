namespace Heatwright.BuildSheets;

/// <summary>Firmware for the bench: the prototype's own controller as the logger of its trials.</summary>
/// <remarks>A line a sample: ms, counts, duty, supply counts. The heater is off while a sample is taken. It stops at a count ceiling and when the link is lost.
/// Commands are single lines: 'd 512' duty step, 'r 300 900' relay between two counts, 'o' off, 'k' keep alive. Checked: EmittedCodeTests.</remarks>
public static class BenchCode
{
    /// <summary>Header and code.</summary>
    /// <param name="ceilingCount">Count at which the heater goes off.</param>
    /// <param name="sampleMs">From line to line.</param>
    /// <param name="waitUs">Wait after the heater went off.</param>
    /// <param name="notes">For the heads.</param>
    public static IReadOnlyList<SheetFile> Files(int ceilingCount, int sampleMs, int waitUs, CodeNotes notes) =>
        [new("bench.h", Header(ceilingCount, sampleMs, waitUs, notes)), new("bench.c", Code(notes))];

    private static string Header(int ceilingCount, int sampleMs, int waitUs, CodeNotes notes) => notes.Head("bench logger",
        "Write the five bench_... hooks for your controller and call bench_poll() in the main loop.",
        "Commands, one a line: d N duty of 1024; r LOW HIGH relay between two counts at the last duty; o off; k keep alive.",
        "Stop at the count ceiling, and when no command came for BENCH_LINK_MS: the heater goes off.") + $$"""
        #ifndef BENCH_H
        #define BENCH_H

        #include <stdint.h>

        #ifdef __cplusplus
        extern "C" {
        #endif

        #define BENCH_SAMPLE_MS   {{sampleMs}}u
        #define BENCH_WAIT_US     {{waitUs}}u
        #define BENCH_CEILING     {{ceilingCount}}u
        #define BENCH_LINK_MS     5000u
        #define BENCH_FULL_DUTY   1024u

        /* Hooks of the board. */
        uint32_t bench_ms(void);                      /* clock */
        void bench_wait_us(uint16_t us);
        uint16_t bench_sensor_count(void);            /* one averaged reading */
        uint16_t bench_supply_count(void);
        void bench_heater(uint16_t duty);             /* 0 is off */
        int16_t bench_get(void);                      /* next byte received, -1: none */
        void bench_put(char c);

        void bench_init(void);
        void bench_poll(void);

        #ifdef __cplusplus
        }
        #endif

        #endif

        """.ReplaceLineEndings("\n");

    private static string Code(CodeNotes notes) => notes.Head("bench logger") + """
        #include "bench.h"

        static uint16_t duty;
        static uint16_t step_duty;
        static uint16_t relay_low;
        static uint16_t relay_high;
        static uint8_t relay;
        static uint32_t last_sample;
        static uint32_t last_word;
        static char line[24];
        static uint8_t length;

        static void put_number(uint32_t number)
        {
            char digits[10];
            uint8_t n = 0u;
            do {
                digits[n] = (char)('0' + (char)(number % 10u));
                n++;
                number /= 10u;
            } while (number > 0u);
            while (n > 0u) {
                n--;
                bench_put(digits[n]);
            }
        }

        static void put_text(const char *text)
        {
            while (*text != '\0') {
                bench_put(*text);
                text++;
            }
        }

        static uint8_t is_digit(char c)
        {
            return (uint8_t)(c >= '0' && c <= '9');
        }

        static uint16_t number_at(uint8_t *place)
        {
            uint32_t number = 0u;
            while (*place < length && !is_digit(line[*place])) {
                (*place)++;
            }
            while (*place < length && is_digit(line[*place])) {
                if (number < 65536u) {
                    number = number * 10u + (uint32_t)(line[*place] - '0');
                }
                (*place)++;
            }
            return number > 65535u ? (uint16_t)65535u : (uint16_t)number;
        }

        static void off(void)
        {
            duty = 0u;
            step_duty = 0u;
            relay = 0u;
            bench_heater(0u);
        }

        static void command(void)
        {
            uint8_t place = 1u;
            if (length == 0u) {
                return;
            }
            if (line[0] == 'd') {
                const uint16_t wanted = number_at(&place);
                relay = 0u;
                step_duty = wanted > BENCH_FULL_DUTY ? (uint16_t)BENCH_FULL_DUTY : wanted;
                duty = step_duty;
            } else if (line[0] == 'r') {
                relay_low = number_at(&place);
                relay_high = number_at(&place);
                relay = (uint8_t)(relay_low < relay_high && step_duty > 0u);
            } else if (line[0] != 'k') {
                off();
                return;
            }
            last_word = bench_ms();
        }

        void bench_init(void)
        {
            length = 0u;
            off();
            last_sample = bench_ms();
            last_word = last_sample;
            put_text("ms,counts,duty,supply\n");
        }

        static void sample(uint32_t now)
        {
            uint16_t count;
            uint16_t supply = bench_supply_count();   /* under load: before the heater goes off */
            bench_heater(0u);
            bench_wait_us((uint16_t)BENCH_WAIT_US);
            count = bench_sensor_count();
            if (count >= BENCH_CEILING) {
                off();
            } else if (relay != 0u) {
                if (count <= relay_low) {
                    duty = step_duty;
                } else if (count >= relay_high) {
                    duty = 0u;
                }
            }
            bench_heater(duty);
            put_number(now);
            bench_put(',');
            put_number(count);
            bench_put(',');
            put_number(duty);
            bench_put(',');
            put_number(supply);
            bench_put('\n');
        }

        void bench_poll(void)
        {
            const uint32_t now = bench_ms();
            int16_t got = bench_get();
            while (got >= 0) {
                if (got == '\n' || got == '\r') {
                    command();
                    length = 0u;
                } else if (length < (uint8_t)sizeof line) {
                    line[length] = (char)got;
                    length++;
                }
                got = bench_get();
            }
            if (duty > 0u || relay != 0u) {
                if ((uint32_t)(now - last_word) > BENCH_LINK_MS) {
                    off();
                }
            }
            if ((uint32_t)(now - last_sample) >= BENCH_SAMPLE_MS) {
                last_sample += BENCH_SAMPLE_MS;
                sample(now);
            }
        }

        """.ReplaceLineEndings("\n");
}
