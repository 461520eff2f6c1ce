"""Pressure at the closed end of thin lines: Bergh & Tijdeman 1965, NLR-TR F.238, by complex Bessel functions.

Independent of the program: prints the phases and peaks that tests/prove/pressureLines.ts compares with.
Run: python3 tests/independent/scipy/pressure_lines.py
"""

import numpy as np
from scipy.optimize import minimize_scalar
from scipy.special import jv

GAMMA, R, MU, PRANDTL, T = 1.4, 287.05, 1.82e-5, 0.707, 288.15


def sensor(lines, volume, frequency, pressure=101325.0):
    """Pressure in a volume [m3] behind lines (length, bore) [m], over that at the open end."""
    omega = 2 * np.pi * frequency
    rho = pressure / (R * T)
    c = np.sqrt(GAMMA * R * T)
    matrix = np.eye(2, dtype=complex)
    for length, bore in lines:
        z = 1j**1.5 * (bore / 2) * np.sqrt(rho * omega / MU)
        share = lambda x: -jv(2, x) / jv(0, x)
        viscous, thermal = share(z), GAMMA - (GAMMA - 1) * share(z * np.sqrt(PRANDTL))
        phase = 1j * omega / c * np.sqrt(thermal / viscous) * length
        impedance = rho * c / (np.pi * bore**2 / 4) / np.sqrt(viscous * thermal)
        matrix = matrix @ np.array(
            [[np.cosh(phase), impedance * np.sinh(phase)], [np.sinh(phase) / impedance, np.cosh(phase)]]
        )
    return 1 / (matrix[0, 0] + matrix[0, 1] * 1j * omega * volume / (GAMMA * pressure))


CASES = {
    "0.5 m 1.0": ([(0.5, 1e-3)], 300e-9, 1),
    "0.5 m 1.5": ([(0.5, 1.5e-3)], 300e-9, 1),
    "0.5 m 2.5": ([(0.5, 2.5e-3)], 300e-9, 1),
    "1 m 1.0": ([(1, 1e-3)], 300e-9, 1),
    "1 m 1.5": ([(1, 1.5e-3)], 300e-9, 1),
    "1 m 2.5": ([(1, 2.5e-3)], 300e-9, 1),
    "3 m 1.0": ([(3, 1e-3)], 300e-9, 1),
    "3 m 2.5": ([(3, 2.5e-3)], 300e-9, 1),
    "1 m 1.5, 100 mm3": ([(1, 1.5e-3)], 100e-9, 1),
    "1 m 1.5, 1000 mm3": ([(1, 1.5e-3)], 1000e-9, 1),
    "1 m 1.5, 0.5 atm": ([(1, 1.5e-3)], 300e-9, 0.5),
    "1 m 1.5, 2 atm": ([(1, 1.5e-3)], 300e-9, 2),
    "0.25 m 1.5 + 0.75 m 2.5": ([(0.25, 1.5e-3), (0.75, 2.5e-3)], 300e-9, 1),
    "0.75 m 1.5 + 0.25 m 1.0": ([(0.75, 1.5e-3), (0.25, 1e-3)], 300e-9, 1),
}

for name, (lines, volume, atmospheres) in CASES.items():
    at = lambda f: sensor(lines, volume, f, 101325 * atmospheres)
    grid = np.arange(1, 201, 0.5)
    ratio = [abs(at(f)) for f in grid]
    rises = [i for i in range(1, len(grid) - 1) if ratio[i - 1] < ratio[i] > ratio[i + 1]]
    peak = ""
    if rises:
        f = grid[rises[0]]
        top = minimize_scalar(lambda x: -abs(at(x)), bounds=(f - 1, f + 1), method="bounded", options={"xatol": 1e-9})
        peak = f"peak {-top.fun:.4f} @ {top.x:.2f} Hz"
    steps = np.unwrap([np.angle(at(f)) for f in np.arange(1, 201)])
    told = [f"{abs(at(f)):.4f}/{np.degrees(steps[f - 1]):.2f}" for f in (10, 50, 100, 200)]
    print(f"{name:26s} {' '.join(told)}  {peak}")
