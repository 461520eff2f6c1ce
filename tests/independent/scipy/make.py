"""Two cases for tests/independent/solver.test.ts, written as JSON beside this file.

    python3 make.py        (Debian: python3-numpy, python3-scipy; about two minutes)

`runner`: a tapered pipe with friction from still air to a space whose pressure swings.
`intake`: one intake event of a cylinder behind a valve, from rest.
Each is solved twice, the second time on more elements, and the change is stored with it.
"""

import json
import pathlib
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp

from pipeflow import GAMMA, R, Pipe, throat

HERE = pathlib.Path(__file__).parent
P0, T0 = 1e5, 300.0

RUNNER = dict(
    length=0.35,
    diameterOpen=0.045,
    diameterSwinging=0.038,
    fanning=0.005,
    pressure=P0,
    temperature=T0,
    swing=0.06,
    frequency=180.0,
    periods=3,
)

INTAKE = dict(
    length=0.3,
    diameter=0.042,
    pressure=P0,
    temperature=T0,
    speed=6500.0,
    bore=0.086,
    stroke=0.086,
    rodLength=0.143,
    compressionRatio=12.0,
    opens=360.0,
    closes=610.0,
    largestArea=8.5e-4,
)


def still(p, T):
    return lambda rho, v, pressure: throat((rho, v, pressure), 1.0, p, T)


def integrate(pipe, rate, end, start, times):
    step = pipe.longest_step
    solution = solve_ivp(
        rate,
        (0, end),
        start,
        'DOP853',
        times,
        rtol=1e-7,
        atol=1e-10,
        first_step=step / 10,
        max_step=step,
    )
    assert solution.success, solution.message
    return solution


def runner(case, elements, order, samples):
    pipe = Pipe(
        case['length'],
        case['diameterOpen'],
        case['diameterSwinging'],
        elements,
        order,
        case['fanning'],
    )
    omega = 2 * np.pi * case['frequency']
    start = pipe.at_rest(P0, T0)

    def rate(t, y):
        p = P0 * (1 - case['swing'] * (1 - np.cos(omega * t)))
        T = T0 * (p / P0) ** ((GAMMA - 1) / GAMMA)
        dU, _, _ = pipe.rate(y.reshape(start.shape), still(P0, T0), still(p, T))
        return dU.ravel()

    end = case['periods'] / case['frequency']
    times = np.linspace(0, end, samples + 1)
    solution = integrate(pipe, rate, end, start.ravel(), times)
    states = [pipe.primitive(y.reshape(start.shape)) for y in solution.y.T]
    middle = elements // 2
    return dict(
        time=times.tolist(),
        # Half-way along: the left node of the middle element.
        pressure=[float(p[middle, 0]) for _, _, p in states],
        velocity=[float(u[middle, 0]) for _, u, _ in states],
    )


def cylinder_volume(case, degrees):
    a, rod = case['stroke'] / 2, case['rodLength']
    t = np.radians(degrees)
    travel = a * (1 - np.cos(t)) + rod - np.sqrt(rod**2 - (a * np.sin(t)) ** 2)
    area = np.pi / 4 * case['bore'] ** 2
    return area * case['stroke'] / (case['compressionRatio'] - 1) + area * travel


def valve_area(case, degrees):
    y = (degrees - case['opens']) / (case['closes'] - case['opens'])
    return case['largestArea'] * np.sin(np.pi * y) ** 2 if 0 < y < 1 else 0.0


def intake(case, elements, order, samples):
    pipe = Pipe(case['length'], case['diameter'], case['diameter'], elements, order)
    per_second = 6 * case['speed']
    start = pipe.at_rest(P0, T0)
    mass = P0 * cylinder_volume(case, case['opens']) / (R * T0)
    # Cylinder: mass and internal energy, made of the size of the pipe's unknowns.
    y0 = np.concatenate([start.ravel(), [mass, mass * R * T0 / (GAMMA - 1)]])

    def rate(t, y):
        degrees = case['opens'] + per_second * t
        volume = cylinder_volume(case, degrees)
        m, e = y[-2:]
        p = (GAMMA - 1) * e / volume
        T = p * volume / (m * R)
        share = valve_area(case, degrees) / pipe.area[-1, -1]

        def valve(rho, v, pressure):
            return throat((rho, v, pressure), share, p, T)

        dU, _, at_valve = pipe.rate(y[:-2].reshape(start.shape), still(P0, T0), valve)
        step = 1e-4
        dV = (cylinder_volume(case, degrees + step) - cylinder_volume(case, degrees - step)) / (
            2 * step
        )
        return np.concatenate([dU.ravel(), [at_valve[0], at_valve[2] - p * dV * per_second]])

    end = (case['closes'] - case['opens']) / per_second
    times = np.linspace(0, end, samples + 1)
    solution = integrate(pipe, rate, end, y0, times)
    angles = case['opens'] + per_second * times
    volumes = cylinder_volume(case, angles)
    pipe_end = [pipe.primitive(y[:-2].reshape(start.shape))[2][-1, -1] for y in solution.y.T]
    return dict(
        angle=angles.tolist(),
        cylinderMass=solution.y[-2].tolist(),
        cylinderPressure=((GAMMA - 1) * solution.y[-1] / volumes).tolist(),
        portPressure=[float(p) for p in pipe_end],
    )


def write(name, solve, case, elements, order, samples):
    coarse = solve(case, elements, order, samples)
    fine = solve(case, 2 * elements, order, samples)
    key = [k for k in fine if k not in ('time', 'angle')]
    change = {
        k: float(np.max(np.abs(np.subtract(fine[k], coarse[k]))) / np.ptp(fine[k])) for k in key
    }
    document = dict(
        made=f'make.py, scipy {scipy.__version__}, numpy {np.__version__}',
        gamma=GAMMA,
        gasConstant=R,
        case=case,
        # Largest change over the range of each signal when the elements are doubled.
        changeOnDoubling=change,
        **{k: [float(f'{x:.7g}') for x in v] for k, v in fine.items()},
    )
    (HERE / f'{name}.json').write_text(json.dumps(document, indent=1) + '\n')
    print(name, change)


if __name__ == '__main__':
    names = sys.argv[1:] or ['runner', 'intake']
    if 'runner' in names:
        write('runner', runner, RUNNER, 8, 6, 60)
    if 'intake' in names:
        write('intake', intake, INTAKE, 8, 6, 100)
