/* Mission B as plain C: the peer that the engine's speed is held against. Our own code; all numbers are invented.
 * One cell with two RC pairs, wiring, a heater behind pulses, four lumps, a PI controller every 0.1 s on a reading in steps; the end is looked at once a sample, by linear interpolation.
 * By fixed Runge-Kutta steps ('sub' a sample), or by CVODE of SUNDIALS (Hindmarsh et al., ACM TOMS 31(3), 2005; BSD 3-clause), stopped or begun anew at every sample.
 *
 * Build: gcc -O3 -march=native mission.c -o mission -lsundials_cvode -lsundials_nvecserial -lsundials_sunmatrixdense -lsundials_sunlinsoldense -lsundials_sunnonlinsolfixedpoint -lm
 *   without that library: gcc -O3 -march=native -DPLAIN_ONLY mission.c -o mission -lm
 * Run:   ./mission MODE [R20=2.0] [target=280] [rtol=1e-4] [sub=1] [reps=3] [quant=1] [trace=FILE]
 *   MODE rk4       fixed step, 'sub' steps per control sample
 *        bdf       BDF, dense, analytic Jacobian, CVodeReInit at each control sample
 *        bdfq      same, Jacobian by CVODE's own difference quotients
 *        bdfh      bdf with the initial step preset to the control period
 *        bdfcont   BDF, no ReInit: only a stop time at each sample
 *        adams     Adams and fixed-point iteration, ReInit at each sample
 *        adamscont Adams, no ReInit
 * Trace: per sample 7 doubles SoC v1 v2 Tcore Ttip Tshank Tgrip (state at the start of the sample), then duty.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <math.h>
#include <time.h>
#ifndef PLAIN_ONLY
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#endif

enum { NS = 7 };
static const double SOC_X[12] = {0, .05, .1, .2, .3, .4, .5, .6, .7, .8, .9, 1.0};
static const double OCV_Y[12] = {2.90, 3.30, 3.44, 3.55, 3.61, 3.65, 3.70, 3.78, 3.87, 3.97, 4.06, 4.18};

typedef struct {
  double R0, R1, C1, R2, C2, QAs, Vcut, Rw, R20, alpha;
  double Cc, Ct, Cs, Cg, gct, gcs, gsg, gta, gsa, gga, sigEA, Ta, Tw, gw;
  double Kp, Ki, target, Ts, lsb; int quant;
  double u, gwork;                    /* held during one control sample */
  long nrhs;
} Par;

static void par_default(Par *p) {
  memset(p, 0, sizeof *p);
  p->R0 = 0.035; p->R1 = 0.012; p->C1 = 3.0 / 0.012; p->R2 = 0.018; p->C2 = 90.0 / 0.018;
  p->QAs = 2.6 * 3600; p->Vcut = 3.0; p->Rw = 0.060; p->R20 = 2.0; p->alpha = 0.0008;
  p->Cc = 1.2; p->Ct = 2.5; p->Cs = 6; p->Cg = 25; p->gct = .35; p->gcs = .05; p->gsg = .03;
  p->gta = .012; p->gsa = .008; p->gga = .02; p->sigEA = 5.670374419e-8 * 0.8 * 4e-4; p->Ta = 22; p->Tw = 60; p->gw = .03;
  p->Kp = .03; p->Ki = .003; p->target = 280; p->Ts = .1; p->lsb = 500.0 / 1023; p->quant = 1;
}

static inline double ocv(double s, double *slope) {
  int i = 0;
  while (i < 10 && s >= SOC_X[i + 1]) i++;
  double b = (OCV_Y[i + 1] - OCV_Y[i]) / (SOC_X[i + 1] - SOC_X[i]);
  if (slope) *slope = b;
  return OCV_Y[i] + b * (s - SOC_X[i]);
}

static inline void rhs(const Par *p, const double *y, double *d) {
  double R = p->R20 * (1 + p->alpha * (y[3] - 20));
  double I = (ocv(y[0], 0) - y[1] - y[2]) / (p->R0 + p->Rw + R);
  double P = p->u * I * I * R, Im = p->u * I;
  double tk = y[4] + 273.15, ak = p->Ta + 273.15;
  double rad = p->sigEA * (tk * tk * tk * tk - ak * ak * ak * ak);
  double qct = p->gct * (y[3] - y[4]), qcs = p->gcs * (y[3] - y[5]), qsg = p->gsg * (y[5] - y[6]);
  d[0] = -Im / p->QAs;
  d[1] = (Im - y[1] / p->R1) / p->C1;
  d[2] = (Im - y[2] / p->R2) / p->C2;
  d[3] = (P - qct - qcs) / p->Cc;
  d[4] = (qct - p->gta * (y[4] - p->Ta) - rad - p->gwork * (y[4] - p->Tw)) / p->Ct;
  d[5] = (qcs - qsg - p->gsa * (y[5] - p->Ta)) / p->Cs;
  d[6] = (qsg - p->gga * (y[6] - p->Ta)) / p->Cg;
}

#ifndef PLAIN_ONLY
static int f_cv(realtype t, N_Vector y, N_Vector yd, void *ud) {
  (void)t; Par *p = ud; p->nrhs++;
  rhs(p, N_VGetArrayPointer(y), N_VGetArrayPointer(yd));
  return 0;
}

static int jac_cv(realtype t, N_Vector yv, N_Vector fy, SUNMatrix J, void *ud, N_Vector a, N_Vector b, N_Vector c) {
  (void)t; (void)fy; (void)a; (void)b; (void)c;
  Par *p = ud; const double *y = N_VGetArrayPointer(yv);
  double sl, E = ocv(y[0], &sl) - y[1] - y[2];
  double R = p->R20 * (1 + p->alpha * (y[3] - 20)), Rt = p->R0 + p->Rw + R, dR = p->R20 * p->alpha;
  double I = E / Rt, dIdE = 1 / Rt, dIdT = -I / Rt * dR, u = p->u;
  double dPdE = u * 2 * I * R * dIdE, dPdT = u * (2 * I * R * dIdT + I * I * dR);
  double tk = y[4] + 273.15;
#define JJ(i, j) SM_ELEMENT_D(J, i, j)
  double dE[3] = {sl, -1, -1};
  for (int k = 0; k < 3; k++) {
    JJ(0, k) = -u * dIdE * dE[k] / p->QAs;
    JJ(1, k) = u * dIdE * dE[k] / p->C1;
    JJ(2, k) = u * dIdE * dE[k] / p->C2;
    JJ(3, k) = dPdE * dE[k] / p->Cc;
  }
  JJ(1, 1) -= 1 / (p->R1 * p->C1); JJ(2, 2) -= 1 / (p->R2 * p->C2);
  JJ(0, 3) = -u * dIdT / p->QAs; JJ(1, 3) = u * dIdT / p->C1; JJ(2, 3) = u * dIdT / p->C2;
  JJ(3, 3) = (dPdT - p->gct - p->gcs) / p->Cc; JJ(3, 4) = p->gct / p->Cc; JJ(3, 5) = p->gcs / p->Cc;
  JJ(4, 3) = p->gct / p->Ct; JJ(4, 4) = -(p->gct + p->gta + p->gwork + 4 * p->sigEA * tk * tk * tk) / p->Ct;
  JJ(5, 3) = p->gcs / p->Cs; JJ(5, 5) = -(p->gcs + p->gsg + p->gsa) / p->Cs; JJ(5, 6) = p->gsg / p->Cs;
  JJ(6, 5) = p->gsg / p->Cg; JJ(6, 6) = -(p->gsg + p->gga) / p->Cg;
  return 0;
}

#endif

static void rk4(const Par *p, double *y, double h) {
  double k1[NS], k2[NS], k3[NS], k4[NS], z[NS];
  rhs(p, y, k1);
  for (int i = 0; i < NS; i++) z[i] = y[i] + .5 * h * k1[i];
  rhs(p, z, k2);
  for (int i = 0; i < NS; i++) z[i] = y[i] + .5 * h * k2[i];
  rhs(p, z, k3);
  for (int i = 0; i < NS; i++) z[i] = y[i] + h * k3[i];
  rhs(p, z, k4);
  for (int i = 0; i < NS; i++) y[i] += h / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
}

static double vterm(const Par *p, const double *y) {
  double E = ocv(y[0], 0) - y[1] - y[2], R = p->R20 * (1 + p->alpha * (y[3] - 20));
  return E - p->R0 * E / (p->R0 + p->Rw + R);
}

static double pi_step(const Par *p, double T, double *integ) {
  double Tm = p->quant ? floor(T / p->lsb + .5) * p->lsb : T;
  double e = p->target - Tm, I = *integ + p->Ki * p->Ts * e, v = p->Kp * e + I;
  double u = v < 0 ? 0 : v > 1 ? 1 : v;
  if ((v > 1 && e > 0) || (v < 0 && e < 0)) I = *integ;     /* anti-windup: hold while pushing into the stop */
  *integ = I;
  return u;
}

static double now(void) { struct timespec t; clock_gettime(CLOCK_MONOTONIC, &t); return t.tv_sec + 1e-9 * t.tv_nsec; }

#define CK(x) do { int r_ = (x); if (r_ < 0) { fprintf(stderr, "%s -> %d\n", #x, r_); exit(1); } } while (0)

int main(int argc, char **argv) {
  Par p; par_default(&p);
  const char *mode = argc > 1 ? argv[1] : "bdf", *trace = 0;
  double rtol = 1e-4; int sub = 1, reps = 3;
  for (int i = 2; i < argc; i++) {
    if (!strncmp(argv[i], "R20=", 4)) p.R20 = atof(argv[i] + 4);
    else if (!strncmp(argv[i], "target=", 7)) p.target = atof(argv[i] + 7);
    else if (!strncmp(argv[i], "rtol=", 5)) rtol = atof(argv[i] + 5);
    else if (!strncmp(argv[i], "sub=", 4)) sub = atoi(argv[i] + 4);
    else if (!strncmp(argv[i], "reps=", 5)) reps = atoi(argv[i] + 5);
    else if (!strncmp(argv[i], "quant=", 6)) p.quant = atoi(argv[i] + 6);
    else if (!strncmp(argv[i], "trace=", 6)) trace = argv[i] + 6;
    else { fprintf(stderr, "unknown argument %s\n", argv[i]); return 2; }
  }
  int isrk = !strcmp(mode, "rk4"), adams = !strncmp(mode, "adams", 5), cont = strstr(mode, "cont") != 0;
  int dq = !strcmp(mode, "bdfq"), h0 = !strcmp(mode, "bdfh");
#ifdef PLAIN_ONLY
  double plain[NS], *Y = plain;
  if (!isrk) { fprintf(stderr, "built without CVODE: only rk4\n"); return 2; }
  const double y0[NS] = {1, 0, 0, 22, 22, 22, 22};
  (void)rtol; (void)adams; (void)cont; (void)dq; (void)h0;
#else
  SUNContext cx; SUNContext_Create(NULL, &cx);
  N_Vector y = N_VNew_Serial(NS, cx), at = N_VNew_Serial(NS, cx);
  double *Y = N_VGetArrayPointer(y), *A = N_VGetArrayPointer(at);
  const double scale[NS] = {1, .05, .05, 100, 100, 100, 100};
  for (int i = 0; i < NS; i++) A[i] = rtol * scale[i];
  const double y0[NS] = {1, 0, 0, 22, 22, 22, 22};
  memcpy(Y, y0, sizeof y0);
  void *cv = 0; SUNMatrix M = 0; SUNLinearSolver LS = 0; SUNNonlinearSolver NLS = 0;
  if (!isrk) {
    cv = CVodeCreate(adams ? CV_ADAMS : CV_BDF, cx);
    CK(CVodeInit(cv, f_cv, 0, y)); CK(CVodeSVtolerances(cv, rtol, at)); CK(CVodeSetUserData(cv, &p));
    if (adams) { NLS = SUNNonlinSol_FixedPoint(y, 0, cx); CK(CVodeSetNonlinearSolver(cv, NLS)); }
    else { M = SUNDenseMatrix(NS, NS, cx); LS = SUNLinSol_Dense(y, M, cx); CK(CVodeSetLinearSolver(cv, LS, M)); if (!dq) CK(CVodeSetJacFn(cv, jac_cv)); }
    CK(CVodeSetMaxNumSteps(cv, 100000)); if (h0) CK(CVodeSetInitStep(cv, p.Ts));
  }
#endif
  double best = 1e99, tend = 0, send = 0, tmed[64]; long n = 0, nst = 0; double duty = 0, cnt_reg = 0, Tmax = 0;
  for (int r = 0; r < reps && r < 64; r++) {
    FILE *tf = trace && r == 0 ? fopen(trace, "wb") : 0;
    memcpy(Y, y0, sizeof y0); p.nrhs = 0; nst = 0; duty = cnt_reg = Tmax = 0;
    double integ = 0, vprev = vterm(&p, Y), sprev = 1; double t0 = now();
#ifndef PLAIN_ONLY
    if (!isrk) CK(CVodeReInit(cv, 0, y));
#endif
    for (n = 0;; n++) {
      double t = n * p.Ts, v = vterm(&p, Y);
      if (v <= p.Vcut || n > 400000) {
        double w = (vprev - p.Vcut) / (vprev - v);
        tend = t - p.Ts * (1 - w); send = sprev + w * (Y[0] - sprev); break;
      }
      vprev = v; sprev = Y[0];
      p.u = pi_step(&p, Y[4], &integ); p.gwork = (n % 200) >= 160 ? p.gw : 0;
      duty += p.u; cnt_reg += p.u < 1 && p.u > 0; if (Y[4] > Tmax) Tmax = Y[4];
      if (tf) { fwrite(Y, 8, NS, tf); fwrite(&p.u, 8, 1, tf); }
      if (isrk) for (int k = 0; k < sub; k++) rk4(&p, Y, p.Ts / sub);
#ifndef PLAIN_ONLY
      else {
        realtype tr, t1 = (n + 1) * p.Ts;
        if (!cont && n) { long s; CVodeGetNumSteps(cv, &s); nst += s; CK(CVodeReInit(cv, t, y)); }
        CK(CVodeSetStopTime(cv, t1)); CK(CVode(cv, t1, y, &tr, CV_NORMAL));
      }
#endif
    }
    double dt = now() - t0; tmed[r] = dt; if (dt < best) best = dt; if (tf) fclose(tf);
#ifndef PLAIN_ONLY
    if (!isrk) { long s; CVodeGetNumSteps(cv, &s); nst += s; }
#endif
  }
  int m = reps < 64 ? reps : 64;
  for (int i = 0; i < m; i++) for (int j = i + 1; j < m; j++) if (tmed[j] < tmed[i]) { double q = tmed[i]; tmed[i] = tmed[j]; tmed[j] = q; }
  double med = tmed[m / 2];
  printf("%-9s rtol=%g sub=%d samples=%ld t_end=%.6f SoC_end=%.8f Tmax=%.3f duty=%.4f regulating=%.3f | ms=%.3f (best %.3f) ns/sample=%.1f rhs/sample=%.2f steps/sample=%.2f\n",
         mode, rtol, sub, n, tend, send, Tmax, duty / n, cnt_reg / n, med * 1e3, best * 1e3, med * 1e9 / n, isrk ? 4.0 * sub : (double)p.nrhs / n, isrk ? (double)sub : (double)nst / n);
  return 0;
}
