/* Mission B as a plain fixed-step Runge-Kutta program: the peer that the engine's speed is held against, and with many sub-steps its reference.
 * One cell with two RC pairs, a switch with pulse widths, a heater, four lumps, a PI controller sampled every 0.1 s on a reading in steps.
 * All numbers are invented. Build: gcc -O3 -march=native mission_b.c -o mission_b -lm
 * Run: mission_b [r20=0.7] [sub=1] [reps=5]
 * Says: samples, end time (the on-state volts fall to 3.0 V; the crossing is found by halving the last sample), charge left, highest tip, milliseconds. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { N = 7 }; /* charge left, short and long pair, core, tip, shank, grip */

static const double KNOT[12] = {0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0};
static const double OPEN[12] = {2.90, 3.30, 3.44, 3.55, 3.61, 3.65, 3.70, 3.78, 3.87, 3.97, 4.06, 4.18};

static double r20 = 0.7;
static double duty, work;

static double open_volts(double s)
{
    int i = 0;
    while (i < 10 && s >= KNOT[i + 1]) i++;
    return OPEN[i] + (OPEN[i + 1] - OPEN[i]) * (s - KNOT[i]) / (KNOT[i + 1] - KNOT[i]);
}

static double amps(const double *y) { return (open_volts(y[0]) - y[1] - y[2]) / (0.035 + 0.060 + r20 * (1 + 0.0008 * (y[3] - 20))); }

static double terminal(const double *y) { return open_volts(y[0]) - y[1] - y[2] - 0.035 * amps(y); }

static void slope(const double *y, double *d)
{
    double i = amps(y), mean = duty * i;
    double watts = mean * i * r20 * (1 + 0.0008 * (y[3] - 20));
    double tip2 = (y[4] + 273.15) * (y[4] + 273.15), air2 = (22 + 273.15) * (22 + 273.15);
    double core_tip = 0.35 * (y[3] - y[4]), core_shank = 0.05 * (y[3] - y[5]), shank_grip = 0.03 * (y[5] - y[6]);
    d[0] = -mean / (2.6 * 3600);
    d[1] = (0.012 * mean - y[1]) / 3.0;
    d[2] = (0.018 * mean - y[2]) / 90.0;
    d[3] = (watts - core_tip - core_shank) / 1.2;
    d[4] = (core_tip - 0.012 * (y[4] - 22) - 5.670374419e-8 * 0.8 * 4e-4 * (tip2 * tip2 - air2 * air2) - work * (y[4] - 60)) / 2.5;
    d[5] = (core_shank - shank_grip - 0.008 * (y[5] - 22)) / 6.0;
    d[6] = (shank_grip - 0.02 * (y[6] - 22)) / 25.0;
}

static void step(double *y, double h)
{
    double a[N], b[N], c[N], d[N], z[N];
    slope(y, a);
    for (int i = 0; i < N; i++) z[i] = y[i] + 0.5 * h * a[i];
    slope(z, b);
    for (int i = 0; i < N; i++) z[i] = y[i] + 0.5 * h * b[i];
    slope(z, c);
    for (int i = 0; i < N; i++) z[i] = y[i] + h * c[i];
    slope(z, d);
    for (int i = 0; i < N; i++) y[i] += h / 6 * (a[i] + 2 * (b[i] + c[i]) + d[i]);
}

static double seconds(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec + 1e-9 * t.tv_nsec;
}

int main(int argc, char **argv)
{
    int sub = 1, reps = 5;
    for (int i = 1; i < argc; i++) {
        if (!strncmp(argv[i], "r20=", 4)) r20 = atof(argv[i] + 4);
        else if (!strncmp(argv[i], "sub=", 4)) sub = atoi(argv[i] + 4);
        else if (!strncmp(argv[i], "reps=", 5)) reps = atoi(argv[i] + 5);
    }
    double best = 1e99, end = 0, left = 0, hot = 0;
    long n = 0;
    for (int r = 0; r < reps; r++) {
        double y[N] = {1, 0, 0, 22, 22, 22, 22}, before[N], integral = 0, start = seconds();
        hot = 0;
        for (n = 0; n < 1000000; n++) {
            if (terminal(y) <= 3.0) break;
            double reading = floor(y[4] * 1023 / 500 + 0.5) * 500 / 1023;
            double error = 280 - reading, next = integral + 0.003 * 0.1 * error, wanted = 0.03 * error + next;
            duty = wanted < 0 ? 0 : wanted > 1 ? 1 : wanted;
            if (!((wanted > 1 && error > 0) || (wanted < 0 && error < 0))) integral = next;
            work = n % 200 >= 160 ? 0.03 : 0;
            if (y[4] > hot) hot = y[4];
            memcpy(before, y, sizeof y);
            for (int k = 0; k < sub; k++) step(y, 0.1 / sub);
        }
        double low = 0, high = 0.1, z[N];
        for (int k = 0; k < 50; k++) {
            double middle = 0.5 * (low + high);
            memcpy(z, before, sizeof z);
            for (int j = 0; j < 8; j++) step(z, middle / 8);
            if (terminal(z) > 3.0) low = middle; else high = middle;
        }
        end = 0.1 * (n - 1) + high;
        left = z[0];
        double took = seconds() - start;
        if (took < best) best = took;
    }
    printf("samples %ld end_s %.9f left %.10f hot_C %.6f ms %.4f ns_a_sample %.2f\n", n, end, left, hot, best * 1e3, best * 1e9 / n);
    return 0;
}
