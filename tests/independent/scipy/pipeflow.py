"""Unsteady quasi-one-dimensional flow in a pipe, solved by a general-purpose integrator.

Written from the equations, independently of the program under test:

    (A rho)_t     + (A rho u)_x             = 0
    (A rho u)_t   + (A rho u^2 + A p)_x     = p A' - (2 f / D) A rho u |u|
    (A rho E)_t   + (A u (rho E + p))_x     = 0,   E = p / ((g - 1) rho) + u^2 / 2

Nodal discontinuous Galerkin in space (Legendre-Gauss-Lobatto nodes of order N in each element,
local Lax-Friedrichs flux between elements), scipy.integrate.solve_ivp (DOP853) in time. The
solutions are smooth, so there is no limiter.

Boundaries set a state that lies on the wave running into the pipe,

    u = u_i -+ 2 (c_i - c_i (p / p_i)^((g-1)/2g)) / (g - 1),

and meets the still gas beyond:

    outflow through a throat   A rho u = Ae G(p01, T01, p2),  p01, T01 stagnation state in the pipe
    inflow through a throat    A rho u = Ae G(p2, T2, p),     h + u^2/2 = h2

with G the isentropic nozzle's mass flux; a full opening has Ae = A (outflow then p = p2, inflow
isentropic from rest). Units SI. Perfect gas.
"""

import numpy as np
from numpy.polynomial import legendre
from scipy.optimize import brentq

GAMMA = 1.4
R = 287.05


def lobatto(order):
    """Nodes, weights and derivative matrix of Legendre-Gauss-Lobatto quadrature."""
    basis = legendre.Legendre.basis(order)
    x = np.concatenate(([-1.0], np.sort(basis.deriv().roots()), [1.0]))
    weights = 2 / (order * (order + 1) * basis(x) ** 2)
    vandermonde = legendre.legvander(x, order)
    slopes = np.stack(
        [legendre.Legendre.basis(k).deriv()(x) if k else 0 * x for k in range(order + 1)], axis=1
    )
    return x, weights, slopes @ np.linalg.inv(vandermonde)


def nozzle_flux(p0, T0, p):
    """Isentropic mass flux per throat area from stagnation p0, T0 to pressure p."""
    critical = (2 / (GAMMA + 1)) ** (GAMMA / (GAMMA - 1))
    r = max(p / p0, critical)
    if r >= 1:
        return 0.0
    psi = np.sqrt(2 * GAMMA / (GAMMA - 1) * (r ** (2 / GAMMA) - r ** ((GAMMA + 1) / GAMMA)))
    return p0 * psi / np.sqrt(R * T0)


class Pipe:
    """Circular pipe with a linear diameter; friction by a constant Fanning factor."""

    def __init__(self, length, diameter_low, diameter_high, elements, order, fanning=0.0):
        nodes, self.weights, derivative = lobatto(order)
        self.h = length / elements
        self.D = derivative
        self.x = (np.arange(elements)[:, None] + 0.5 * (nodes[None, :] + 1)) * self.h
        slope = (diameter_high - diameter_low) / length
        self.diameter = diameter_low + slope * self.x
        self.area = np.pi / 4 * self.diameter**2
        self.area_slope = np.pi / 2 * self.diameter * slope
        self.fanning = fanning
        # Time in which sound crosses the narrowest gap of nodes, twice over: the longest step.
        self.longest_step = 2 * (self.x[0, 1] - self.x[0, 0]) / np.sqrt(GAMMA * R * 300)

    def at_rest(self, p, T):
        rho = p / (R * T)
        return np.stack([self.area * rho, 0 * self.area, self.area * p / (GAMMA - 1)])

    def primitive(self, U):
        rho = U[0] / self.area
        u = U[1] / U[0]
        p = (GAMMA - 1) * (U[2] / self.area - 0.5 * rho * u**2)
        return rho, u, p

    def rate(self, U, low, high):
        """dU/dt; `low` and `high` map the state (rho, v out of the pipe, p) at an end to the state there."""
        rho, u, p = self.primitive(U)
        F = flux(self.area, rho, u, p)
        c = np.sqrt(GAMMA * p / rho)
        L, Rr = np.s_[1:, 0], np.s_[:-1, -1]
        speed = np.maximum(np.abs(u[L]) + c[L], np.abs(u[Rr]) + c[Rr])
        inner = 0.5 * (F[:, :-1, -1] + F[:, 1:, 0]) - 0.5 * speed * (U[:, 1:, 0] - U[:, :-1, -1])
        first = low(rho[0, 0], -u[0, 0], p[0, 0])
        last = high(rho[-1, -1], u[-1, -1], p[-1, -1])
        at_low = flux(self.area[0, 0], first[0], -first[1], first[2])
        at_high = flux(self.area[-1, -1], *last)
        left = np.concatenate([at_low[:, None], inner], axis=1)
        right = np.concatenate([inner, at_high[:, None]], axis=1)
        out = -np.einsum('ij,vej->vei', self.D, F)
        out[:, :, 0] -= (F[:, :, 0] - left) / self.weights[0]
        out[:, :, -1] += (F[:, :, -1] - right) / self.weights[-1]
        out *= 2 / self.h
        out[1] += p * self.area_slope
        out[1] -= 2 * self.fanning / self.diameter * self.area * rho * u * np.abs(u)
        return out, at_low, at_high


def flux(A, rho, u, p):
    m = A * rho * u
    return np.stack([m, m * u + A * p, m * (GAMMA / (GAMMA - 1) * p / rho + 0.5 * u * u)])


def behind_wave(state, p):
    """Density and outward velocity where the wave into the pipe has brought pressure p."""
    rho, v, p_i = state
    c = np.sqrt(GAMMA * p_i / rho)
    t = (p / p_i) ** ((GAMMA - 1) / (2 * GAMMA))
    return rho * (p / p_i) ** (1 / GAMMA), v + 2 * c / (GAMMA - 1) * (1 - t)


def rest_pressure(state):
    rho, v, p = state
    c = np.sqrt(GAMMA * p / rho)
    return p * (1 + (GAMMA - 1) / 2 * v / c) ** (2 * GAMMA / (GAMMA - 1))


def throat(state, share, p2, T2):
    """State (rho, v out, p) of an end with a throat of `share` of its area to still gas p2, T2."""
    rest = rest_pressure(state)
    if share < 1e-12 or abs(rest / p2 - 1) < 1e-13:
        return np.array([behind_wave(state, rest)[0], 0.0, rest])
    if rest > p2:
        return outflow(state, min(share, 1.0), p2, rest)
    return inflow(state, min(share, 1.0), p2, T2, rest)


def outflow(state, share, p2, rest):
    def excess(p):
        rho, v = behind_wave(state, p)
        T = p / (rho * R)
        heat = 1 + (GAMMA - 1) / 2 * v * v / (GAMMA * R * T)
        p0 = p * heat ** (GAMMA / (GAMMA - 1))
        return rho * v - share * nozzle_flux(p0, T * heat, p2)

    p = p2 if share >= 1 else brentq(excess, p2, rest, xtol=1e-7, rtol=1e-14)
    rho, v = behind_wave(state, p)
    return np.array([rho, v, p])


def inflow(state, share, p2, T2, rest):
    cp = GAMMA * R / (GAMMA - 1)

    def entering(p):
        """Speed of gas that carries the throat's flux at pressure p with its enthalpy kept."""
        m = share * nozzle_flux(p2, T2, p)
        if m <= 0:
            return 0.0
        b = p / (m * R)
        return cp * (-b + np.sqrt(b * b + 2 * T2 / cp))

    p = brentq(lambda p: -behind_wave(state, p)[1] - entering(p), rest, p2, xtol=1e-7, rtol=1e-14)
    v = entering(p)
    T = T2 - v * v / (2 * cp)
    return np.array([p / (R * T), -v, p])
