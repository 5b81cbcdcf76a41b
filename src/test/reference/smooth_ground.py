#!/usr/bin/env python3
"""Loss over free space of two antennas over a smooth round earth, for smooth-ground-residue.csv.

Where it converges (from 1 to 4 km on) the full residue series of the field over a sphere with an impedance surface (V. A. Fock, Electromagnetic
Diffraction and Propagation Problems, Pergamon 1965, chapter 10; time factor exp(-iwt) inside):

    E/E0 = 2 sqrt(pi x) | sum_s exp(i x t_s) w1(t_s - y1) w1(t_s - y2) / ((t_s - q^2) w1(t_s)^2) |
    w1'(t_s) = q w1(t_s),  x = m d/a,  y = k h/m,  m = (k a/2)^(1/3),  q = i m delta

with 1200 terms, k = 4/3. Nearer, where curvature costs less than 0.1 dB, Norton's flat-earth
field (K. A. Norton, Proc. IRE 25, 1937): 1 + [R + (1 - R) F(w)] (r1/r2) exp(-jk(r2 - r1)).

Run: python3 smooth_ground.py > ../resources/handreach/propagation/smooth-ground-residue.csv   (numpy, scipy)
"""
import numpy as np
from scipy.special import ai_zeros, airye, wofz

C0 = 299792458.0
RADIUS = 4 / 3 * 6371e3
TERMS = 1200
TURN = np.exp(2j * np.pi / 3)


def w1(t):
    """w1 and its derivative, both without the factor exp(-2/3 (t e^{2 pi i/3})^{3/2}), and that exponent."""
    u = t * TURN
    ai, aip, _, _ = airye(u)
    return ai, TURN * aip, -2 / 3 * u * np.sqrt(u)


def airy_prime_zeros(n):
    _, ap, _, _ = ai_zeros(n)
    return -ap


def roots(q):
    t = airy_prime_zeros(TERMS) * np.exp(1j * np.pi / 3)
    for share in np.linspace(0, 1, 251)[1:] ** 2:
        for _ in range(3):
            w, wp, _ = w1(t)
            t = t - (wp - q * share * w) / (t * w - q * share * wp)
    return t


def impedance(f_mhz, eps, sigma, vertical, cos2=1.0):
    e = eps - 1j * sigma / (2 * np.pi * f_mhz * 1e6 * 8.8541878128e-12)
    return np.sqrt(e - cos2) / (e if vertical else 1)


def residue(d, h1, h2, f_mhz, t, q):
    k = 2 * np.pi * f_mhz * 1e6 / C0
    m = (k * RADIUS / 2) ** (1 / 3)
    w0, _, e0 = w1(t)
    gain = 1
    for h in (h1, h2):
        w, _, e = w1(t - k * h / m)
        gain = gain * w / w0 * np.exp(e - e0)
    x = d * m / RADIUS
    return abs(2 * np.sqrt(np.pi * x) * np.sum(np.exp(1j * x * t) * gain / (t - q * q)))


def norton(d, h1, h2, f_mhz, eps, sigma, vertical):
    k = 2 * np.pi * f_mhz * 1e6 / C0
    r1, r2 = np.hypot(d, h1 - h2), np.hypot(d, h1 + h2)
    sine = (h1 + h2) / r2
    delta = impedance(f_mhz, eps, sigma, vertical, 1 - sine ** 2)
    r = (sine - delta) / (sine + delta)
    w = -0.5j * k * r2 * (sine + delta) ** 2
    root = np.sqrt(w)
    f = 1 - 1j * np.sqrt(np.pi) * root * wofz(-root)
    return abs(1 + (r + (1 - r) * f) * r1 / r2 * np.exp(-1j * k * (r2 - r1)))


def main():
    print('# source: residue series over a sphere with impedance surface, V. A. Fock, Electromagnetic Diffraction and Propagation')
    print('#   Problems (Pergamon 1965), where it converges; flat-earth field of K. A. Norton, Proc. IRE 25 (1937), nearer')
    print('# made by: src/test/reference/smooth_ground.py; k = 4/3; rounded to 0.01 dB')
    print('frequency_mhz,polarization,permittivity,conductivity,height1_m,height2_m,distance_m,excess_db')
    for f in (30, 50, 100, 146, 220, 300, 446, 500, 900):
        for eps, sigma in ((15, 0.005), (4, 0.001), (30, 0.01)):
            for vertical in (True, False):
                k = 2 * np.pi * f * 1e6 / C0
                m = (k * RADIUS / 2) ** (1 / 3)
                q = 1j * m * np.conj(impedance(f, eps, sigma, vertical))
                t = roots(q)
                for h1, h2 in ((1, 1), (1.5, 1.5), (1, 10), (3, 3), (5, 2), (10, 10)):
                    for d in (100, 200, 500, 1000, 2000, 4000, 7000, 10000, 14000, 20000):
                        series = d * m / RADIUS * t[-1].imag > 12
                        field = residue(d, h1, h2, f, t, q) if series else norton(d, h1, h2, f, eps, sigma, vertical)
                        print('%g,%s,%g,%g,%g,%g,%g,%.2f' % (f, 'V' if vertical else 'H', eps, sigma, h1, h2, d, -20 * np.log10(field)))


if __name__ == '__main__':
    main()
