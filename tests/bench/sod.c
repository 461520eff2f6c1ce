/* Scalar reference loop for `npm run bench`: MUSCL-Hancock on primitives, van Leer, HLLC, two passive
 * scalars, constant gamma, Sod's problem. Prints cell updates per second, the best of several rounds.
 * Usage: sod CELLS STEPS ROUNDS */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define MOST 4096
#define FIELDS 5
static const double G = 1.4;
static double w[FIELDS][MOST], left[FIELDS][MOST + 1], right[FIELDS][MOST + 1], f[FIELDS][MOST + 1];

static double limited(double a, double b) { return a * b > 0 ? 2 * a * b / (a + b) : 0; }

static void predict(int n, double dt, double dx) {
  for (int i = 1; i < n - 1; i++) {
    double d[FIELDS], mid[FIELDS];
    for (int k = 0; k < FIELDS; k++) d[k] = limited(w[k][i] - w[k][i - 1], w[k][i + 1] - w[k][i]);
    const double r = w[0][i], u = w[1][i], p = w[2][i], h = 0.5 * dt / dx;
    mid[0] = r - h * (u * d[0] + r * d[1]);
    mid[1] = u - h * (u * d[1] + d[2] / r);
    mid[2] = p - h * (u * d[2] + G * p * d[1]);
    for (int k = 3; k < FIELDS; k++) mid[k] = w[k][i] - h * u * d[k];
    for (int k = 0; k < FIELDS; k++) {
      right[k][i] = mid[k] - 0.5 * d[k];
      left[k][i + 1] = mid[k] + 0.5 * d[k];
    }
  }
}

static void fluxes(int n) {
  for (int i = 2; i < n - 1; i++) {
    const double rl = left[0][i], ul = left[1][i], pl = left[2][i];
    const double rr = right[0][i], ur = right[1][i], pr = right[2][i];
    const double cl = sqrt(G * pl / rl), cr = sqrt(G * pr / rr);
    const double ps = 0.5 * (pl + pr) - 0.125 * (ur - ul) * (rl + rr) * (cl + cr);
    const double ql = ps > pl ? sqrt(1 + 0.5 * (G + 1) / G * (ps / pl - 1)) : 1;
    const double qr = ps > pr ? sqrt(1 + 0.5 * (G + 1) / G * (ps / pr - 1)) : 1;
    const double sl = ul - cl * ql, sr = ur + cr * qr;
    const double ml = rl * (sl - ul), mr = rr * (sr - ur);
    const double s = (pr - pl + ul * ml - ur * mr) / (ml - mr);
    const int from_left = s >= 0;
    const double r = from_left ? rl : rr, u = from_left ? ul : ur, p = from_left ? pl : pr;
    const double e = p / (G - 1) + 0.5 * r * u * u;
    double mass;
    if (from_left ? sl >= 0 : sr <= 0) {
      mass = r * u;
      f[1][i] = mass * u + p;
      f[2][i] = u * (e + p);
    } else {
      const double sk = from_left ? sl : sr;
      const double pstar = p + r * (sk - u) * (s - u);
      mass = r * (sk - u) / (sk - s) * s;
      f[1][i] = mass * s + pstar;
      f[2][i] = s * (((sk - u) * e - p * u + pstar * s) / (sk - s) + pstar);
    }
    f[0][i] = mass;
    for (int k = 3; k < FIELDS; k++) f[k][i] = mass * (from_left ? left[k][i] : right[k][i]);
  }
}

static double update(int n, double dt, double dx) {
  double fastest = 0;
  for (int i = 2; i < n - 2; i++) {
    const double h = dt / dx, r0 = w[0][i];
    const double r = r0 + h * (f[0][i] - f[0][i + 1]);
    const double m = r0 * w[1][i] + h * (f[1][i] - f[1][i + 1]);
    const double e0 = w[2][i] / (G - 1) + 0.5 * r0 * w[1][i] * w[1][i];
    const double e = e0 + h * (f[2][i] - f[2][i + 1]);
    for (int k = 3; k < FIELDS; k++) w[k][i] = (r0 * w[k][i] + h * (f[k][i] - f[k][i + 1])) / r;
    w[0][i] = r;
    w[1][i] = m / r;
    w[2][i] = (G - 1) * (e - 0.5 * m * m / r);
    const double c = fabs(w[1][i]) + sqrt(G * w[2][i] / r);
    if (c > fastest) fastest = c;
  }
  return fastest;
}

int main(int argc, char **argv) {
  const int cells = atoi(argv[1]), steps = atoi(argv[2]), rounds = atoi(argv[3]);
  if (argc != 4 || cells + 4 > MOST) return 2;
  const int n = cells + 4;
  const double dx = 1.0 / cells;
  double best = 0;
  for (int round = 0; round < rounds; round++) {
    for (int i = 0; i < n; i++) {
      const int high = i < n / 2;
      w[0][i] = high ? 1 : 0.125;
      w[1][i] = 0;
      w[2][i] = high ? 1 : 0.1;
      w[3][i] = high;
      w[4][i] = 0;
    }
    double fastest = 1.2;
    struct timespec a, b;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &a);
    for (int s = 0; s < steps; s++) {
      const double dt = 0.4 * dx / fmax(fastest, 1.2);
      predict(n, dt, dx);
      fluxes(n);
      fastest = update(n, dt, dx);
    }
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &b);
    const double seconds = (b.tv_sec - a.tv_sec) + 1e-9 * (b.tv_nsec - a.tv_nsec);
    const double rate = (double)cells * steps / seconds;
    if (rate > best) best = rate;
  }
  printf("%.6e\n", best);
  return 0;
}
