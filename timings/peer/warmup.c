/*
 * A working end and its grip under a recorded power, by CVODE of SUNDIALS (Hindmarsh et al., ACM TOMS 31(3), 2005; BSD 3-clause): the general-purpose solver that the warm-up fit is compared with,
 * called from the same process.
 *
 * Build: gcc -O3 -march=native -shared -fPIC warmup.c -o libwarmup.so -lsundials_cvode -lsundials_nvecserial -lsundials_sunmatrixdense -lsundials_sunlinsoldense -lsundials_sunnonlinsolfixedpoint -lm
 */
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

typedef struct { double c1, g1, link, c2, g2, watts; } Two;

static int slope(realtype t, N_Vector yv, N_Vector dv, void *data) {
  const Two *p = data; double *y = NV_DATA_S(yv), *d = NV_DATA_S(dv);
  double flow = p->link * (y[0] - y[1]);
  d[0] = (p->watts - p->g1 * y[0] - flow) / p->c1;
  d[1] = (flow - p->g2 * y[1]) / p->c2;
  return 0;
}

static int jacobian(realtype t, N_Vector yv, N_Vector fy, SUNMatrix J, void *data, N_Vector a, N_Vector b, N_Vector c) {
  const Two *p = data;
  SM_ELEMENT_D(J, 0, 0) = -(p->g1 + p->link) / p->c1; SM_ELEMENT_D(J, 0, 1) = p->link / p->c1;
  SM_ELEMENT_D(J, 1, 0) = p->link / p->c2; SM_ELEMENT_D(J, 1, 1) = -(p->link + p->g2) / p->c2;
  return 0;
}

/* Rises at n instants from a cold start; watts[i] holds from t[i] to t[i + 1]. Where 'steady', the power never changes and the solver is never stopped. Returns the solver's steps, or -1. */
long warm_up(int n, const double *t, const double *watts, const double *p, int adams, int steady, double tolerance, double *end, double *grip) {
  Two two = { p[0], p[1], p[2], p[3], p[4], watts[0] };
  SUNContext cx;
  if (SUNContext_Create(NULL, &cx)) return -1;
  N_Vector y = N_VNew_Serial(2, cx);
  NV_Ith_S(y, 0) = NV_Ith_S(y, 1) = 0;
  void *cv = CVodeCreate(adams ? CV_ADAMS : CV_BDF, cx);
  SUNMatrix M = NULL; SUNLinearSolver LS = NULL; SUNNonlinearSolver NLS = NULL;
  int bad = CVodeInit(cv, slope, 0, y) || CVodeSStolerances(cv, tolerance, tolerance) || CVodeSetUserData(cv, &two) || CVodeSetMaxNumSteps(cv, 100000);
  if (adams) { NLS = SUNNonlinSol_FixedPoint(y, 0, cx); bad = bad || CVodeSetNonlinearSolver(cv, NLS); }
  else { M = SUNDenseMatrix(2, 2, cx); LS = SUNLinSol_Dense(y, M, cx); bad = bad || CVodeSetLinearSolver(cv, LS, M) || CVodeSetJacFn(cv, jacobian); }
  long steps = 0, some = 0;
  end[0] = grip[0] = 0;
  for (int i = 1; i < n && !bad; i++) {
    realtype reached;
    if (!steady) {
      two.watts = watts[i - 1];
      if (i > 1) { CVodeGetNumSteps(cv, &some); steps += some; bad = CVodeReInit(cv, t[i - 1], y); }
      bad = bad || CVodeSetStopTime(cv, t[i]);
    }
    bad = bad || CVode(cv, t[i], y, &reached, CV_NORMAL) < 0;
    end[i] = NV_Ith_S(y, 0); grip[i] = NV_Ith_S(y, 1);
  }
  CVodeGetNumSteps(cv, &some); steps += some;
  CVodeFree(&cv); N_VDestroy(y);
  if (M) SUNMatDestroy(M);
  if (LS) SUNLinSolFree(LS);
  if (NLS) SUNNonlinSolFree(NLS);
  SUNContext_Free(&cx);
  return bad ? -1 : steps;
}
