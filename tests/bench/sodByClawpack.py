"""Sod's problem by Clawpack's one-dimensional Euler solver (PyClaw 5): density at time 0.2, seconds a solution."""

import json
import sys
import time

from clawpack import pyclaw, riemann

CELLS = int(sys.argv[1])
ROUNDS = int(sys.argv[2])
GAMMA = 1.4


def solution():
    solver = pyclaw.ClawSolver1D(riemann.euler_with_efix_1D)
    solver.limiters = pyclaw.limiters.tvd.vanleer
    solver.bc_lower[0] = pyclaw.BC.extrap
    solver.bc_upper[0] = pyclaw.BC.extrap
    domain = pyclaw.Domain([0.0], [1.0], [CELLS])
    state = pyclaw.State(domain, 3)
    state.problem_data["gamma"] = GAMMA
    state.problem_data["gamma1"] = GAMMA - 1
    left = state.grid.x.centers < 0.5
    state.q[0, left], state.q[0, ~left] = 1.0, 0.125
    state.q[1, :] = 0.0
    state.q[2, left], state.q[2, ~left] = 1.0 / (GAMMA - 1), 0.1 / (GAMMA - 1)
    run = pyclaw.Controller()
    run.solution = pyclaw.Solution(state, domain)
    run.solver = solver
    run.tfinal = 0.2
    run.num_output_times = 1
    run.output_format = None
    run.keep_copy = False
    run.verbosity = 0
    start = time.perf_counter()
    run.run()
    return time.perf_counter() - start, run.solution.state.q[0, :].tolist()


results = [solution() for _ in range(ROUNDS)]
print(json.dumps({"seconds": sorted(s for s, _ in results)[ROUNDS // 2], "rho": results[-1][1]}))
