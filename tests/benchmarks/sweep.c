/* The sweep of sweepCases.ts, the same loop in C: Newton in (phi, v), each case from its neighbour's solution.
 * Built at -O2 by run.ts where a C compiler is found; prints solves per second and the three sums. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { MOTORS = 100, ROTORS = 50, DIAMETERS = 10, PACKS = 4, GAPS = 5, SIZE = 1000000 };
static const double PI = 3.14159265358979323846;
static const double DENSITY = 1.2, VISCOSITY = 1.81e-5, DUTY = 0.95, DRIVER = 0.01, AUX = 0.4;
static const double PERIMETER = 0.36, LAND = 0.004, LOSS_SUM = 1.5;

typedef struct { double k, resistance, friction, viscous; } Motor;
typedef struct { double psi[5], lambda[5], end; } Rotor;
typedef struct { double voltage, resistance; } Pack;
typedef struct {
  double psi[5], lambda[5], end, radius, k, resistance, friction, viscous, driving;
  double gapArea, inertia, laminar, turbulent, crossing, opening;
} Case;
typedef struct { double phi, speed, flow, pressure, v; } Result;

static Motor motors[MOTORS]; static Rotor rotors[ROTORS]; static double diameters[DIAMETERS]; static Pack packs[PACKS]; static double gaps[GAPS];

static void tables(void) {
  for (int i = 0; i < MOTORS; i++) {
    int a = i % 10, b = i / 10; double kv = 1200 + 1800 * a, k = 60 / (2 * PI * kv);
    motors[i] = (Motor){k, (0.1 + 0.1 * b) * sqrt(6000 / kv), k * (0.05 + 0.02 * a), 1e-8 * (1 + b)};
  }
  for (int j = 0; j < ROTORS; j++) {
    int p = j % 10, q = j / 10; double p0 = 0.5 + 0.08 * p, f = 0.08 + 0.05 * q, c = 0.2 + 0.15 * (p % 4), d = 0.1 + 0.1 * (q % 3);
    rotors[j] = (Rotor){{p0, p0 * (c - 1) / f, p0 * (d - c) / (f * f), -p0 * d / (f * f * f), 0}, {0.02 + 0.01 * (p % 5), 1.1 * p0, -0.3 * p0 / f, 0, 0}, f};
  }
  for (int k = 0; k < DIAMETERS; k++) diameters[k] = 0.02 + 0.006 * k;
  for (int m = 0; m < PACKS; m++) packs[m] = (Pack){3.8 * (m + 1), 0.02 * (m + 1) + 0.015};
  for (int g = 0; g < GAPS; g++) gaps[g] = 0.0002 + 0.0003 * g;
}

static void write_case(Case *c, int index) {
  const Motor *mo = &motors[index / 10000]; const Rotor *ro = &rotors[index / 200 % 50];
  const Pack *pa = &packs[index / 5 % 4]; double h = gaps[index % 5];
  for (int n = 0; n < 5; n++) { c->psi[n] = ro->psi[n]; c->lambda[n] = ro->lambda[n]; }
  c->end = ro->end; c->radius = diameters[index / 20 % 10] / 2; c->k = mo->k; c->friction = mo->friction; c->viscous = mo->viscous;
  c->resistance = mo->resistance + DRIVER + DUTY * DUTY * pa->resistance;
  c->driving = DUTY * (pa->voltage - pa->resistance * AUX);
  c->opening = 0.61 * 1.2e-5 * sqrt(2 / DENSITY);
  c->gapArea = PERIMETER * h; c->inertia = 0.5 * DENSITY * LOSS_SUM; c->laminar = 12 * VISCOSITY * LAND / (h * h);
  c->turbulent = 0.5 * DENSITY * 0.3164 * sqrt(sqrt(VISCOSITY / (DENSITY * 2 * h))) * LAND / (2 * h);
  c->crossing = pow(96 / 0.3164, 4.0 / 3) * VISCOSITY / (DENSITY * 2 * h);
}

static int solve(const Case *c, Result *r) {
  double area = PI * c->radius * c->radius, half = 0.5 * DENSITY, loadFactor = half * area * c->radius * c->radius * c->radius;
  double damping = c->k * c->k / c->resistance + c->viscous, drive = c->k * c->driving / c->resistance - c->friction;
  double phi = r->phi, v = r->v; int settled = 0;
  for (int it = 1; it <= 40; it++) {
    const double *p = c->psi, *l = c->lambda;
    double psi = p[0] + phi * (p[1] + phi * (p[2] + phi * (p[3] + phi * p[4]))), psiS = p[1] + phi * (2 * p[2] + phi * (3 * p[3] + phi * 4 * p[4]));
    double lam = l[0] + phi * (l[1] + phi * (l[2] + phi * (l[3] + phi * l[4]))), lamS = l[1] + phi * (2 * l[2] + phi * (3 * l[3] + phi * 4 * l[4]));
    double root = sqrt(damping * damping + 4 * loadFactor * lam * drive), speed = 2 * drive / (damping + root), u = speed * c->radius;
    double uS = -loadFactor * lamS * speed * speed * c->radius / root;
    double rise = half * u * u * psi, riseS = half * u * (2 * uS * psi + u * psiS), flow = phi * area * u, flowS = area * (u + phi * uS);
    int laminar = v <= c->crossing;
    double rub = laminar ? c->laminar * v : c->turbulent * v * v * sqrt(sqrt(1 / v));
    double drop = c->inertia * v * v + rub, dropS = 2 * c->inertia * v + (laminar ? c->laminar : 1.75 * rub / v), rootDrop = sqrt(drop);
    double ef = flow - c->gapArea * v - c->opening * rootDrop, ep = rise - drop;
    if (settled) { r->phi = phi; r->speed = speed; r->flow = flow; r->pressure = rise; r->v = v; return 1; }
    double leakS = c->gapArea + c->opening * 0.5 * dropS / rootDrop, det = leakS * riseS - flowS * dropS;
    double dphi = (dropS * ef - leakS * ep) / det, dv = (riseS * ef - flowS * ep) / det, np = phi + dphi, nv = v + dv;
    settled = fabs(dphi) < 1e-9 * phi && fabs(dv) < 1e-9 * v;
    phi = np > 0 ? (np < c->end ? np : 0.5 * (phi + c->end)) : 0.5 * phi;
    v = nv > 0 ? nv : 0.5 * v;
  }
  return 0;
}

int main(void) {
  tables();
  Case c; Result r = {0}; double sp = 0, sw = 0, sq = 0; struct timespec a, b;
  clock_gettime(CLOCK_MONOTONIC, &a);
  for (int index = 0; index < SIZE; index++) {
    write_case(&c, index);
    if (index % GAPS == 0) { r.phi = 0.5 * c.end; r.v = 30; }
    if (!solve(&c, &r)) { r.phi = 0.5 * c.end; r.v = 30; if (!solve(&c, &r)) return 1; }
    sp += r.pressure; sw += r.speed; sq += r.flow;
  }
  clock_gettime(CLOCK_MONOTONIC, &b);
  double seconds = (double)(b.tv_sec - a.tv_sec) + 1e-9 * (double)(b.tv_nsec - a.tv_nsec);
  printf("{\"solvesPerSecond\":%.0f,\"sums\":{\"pressure\":%.10e,\"speed\":%.10e,\"flow\":%.10e}}\n", SIZE / seconds, sp, sw, sq);
  return 0;
}
