/* Runs the step of `npm run bench` natively. Usage: step IMAGE PLACE STEPS ROUNDS: the memory to begin
 * with, the place in X of the crank angle left, steps a round. Prints the least
 * seconds of a round, and how far is left. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "step.h"

static double now() {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

int main(int argc, char **argv) {
  if (argc != 5) return 2;
  FILE *image = fopen(argv[1], "rb");
  if (!image || fread(memory, 1, sizeof memory, image) == 0) return 1;
  const int left = atoi(argv[2]), steps = atoi(argv[3]), rounds = atoi(argv[4]);
  double best = 1e9;
  for (int round = 0; round < rounds; round++) {
    X_AT(AT_X, 16 * left) = $k(R(1e6));
    const double start = now();
    run(steps);
    const double seconds = now() - start;
    if (seconds < best) best = seconds;
  }
  printf("%.9e %.17g\n", best, (double)X_AT(AT_X, 16 * left)[0]);
  return 0;
}
