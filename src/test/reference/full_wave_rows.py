#!/usr/bin/python3
"""Makes the reference rows of the field march: exact answers that use no parabolic equation.

Norton       level impedance ground, R + (1 - R) F with the complex error function of scipy
sphere       smooth impedance sphere, the whole residue series (V. A. Fock, Electromagnetic Diffraction and Propagation
             Problems, Pergamon 1965, chapter 10), poles by continuation and Newton, Airy functions of scipy
screen       half plane, J(nu) by Fresnel integrals (Rec. ITU-R P.526, section 4.1)
wedge        perfectly reflecting wedge, uniform theory of diffraction (Kouyoumjian and Pathak, Proc. IEEE 62 (1974) 1448)
Faddeeva     w(z) by mpmath with 40 digits

Run: python3 full_wave_rows.py DIRECTORY      (needs numpy, scipy, mpmath)
"""
import math
import sys
from pathlib import Path

import mpmath
import numpy as np
from scipy.special import ai_zeros, airy, fresnel, wofz

C0 = 299792458.0
EPS0 = 8.8541878128e-12


def impedance(eps, sigma, f_mhz, pol, cos2=1.0):
    e = eps - 1j * sigma / (2 * math.pi * f_mhz * 1e6 * EPS0)
    r = np.sqrt(e - cos2)
    return r / e if pol == 'V' else r


def norton_db(d, h1, h2, f, eps, sigma, pol):
    k = 2 * math.pi * f * 1e6 / C0
    r1, r2 = math.hypot(d, h1 - h2), math.hypot(d, h1 + h2)
    sn = (h1 + h2) / r2
    delta = impedance(eps, sigma, f, pol, (d / r2) ** 2)
    refl = (sn - delta) / (sn + delta)
    p = -0.5j * k * r2 * (sn + delta) ** 2
    root = np.sqrt(p)
    att = 1 - 1j * math.sqrt(math.pi) * root * wofz(-root)
    factor = 1 + (refl + (1 - refl) * att) * (r1 / r2) * np.exp(-1j * k * (r2 - r1))
    return -20 * math.log10(abs(factor))


def w1(t):
    """Fock's w1 up to a constant, and its derivative: Ai(t exp(2 pi i/3))."""
    turn = np.exp(2j * math.pi / 3)
    a = airy(t * turn)
    return a[0], a[1] * turn


def sphere_poles(q, count):
    """Roots of w1'(t) = q w1(t): continued from q = infinity, where they are Airy zeros turned by 60 degrees."""
    zeros = ai_zeros(count)[0] if count <= 300 else np.array([float(mpmath.airyaizero(s)) for s in range(1, count + 1)])
    t = -zeros * np.exp(1j * math.pi / 3)
    for u in np.linspace(0.02, 1, 50):
        # (q/u) is the current q; Newton on w1' u - q w1 = 0, with w1'' = t w1
        for _ in range(8):
            v, d = w1(t)
            step = (u * d - q * v) / (u * t * v - q * d)
            t = t - step
    v, d = w1(t)
    assert np.max(abs((d - q * v) / (abs(d) + abs(q * v)))) < 1e-8
    assert np.all(np.diff(t.real) > 0)
    return t


def sphere_db(d, h1, h2, f, eps, sigma, pol, a_m, count=300):
    """Loss over free space; time factor exp(-iwt) inside, as in Fock."""
    k = 2 * math.pi * f * 1e6 / C0
    m = (k * a_m / 2) ** (1 / 3)
    q = 1j * m * np.conj(impedance(eps, sigma, f, pol))
    x = m * d / a_m
    y1, y2 = (k * h / m for h in (h1, h2))
    t = sphere_poles(q, count)
    v = w1(t)[0]
    terms = np.exp(1j * x * t) / (t - q * q) * w1(t - y1)[0] / v * w1(t - y2)[0] / v
    assert abs(terms[-1]) < 1e-6 * abs(terms.sum()), (d, abs(terms[-1]), abs(terms.sum()))
    return -20 * math.log10(abs(2 * math.sqrt(math.pi * x) * terms.sum()))


def screen_db(nu):
    s, c = fresnel(nu)
    return -20 * math.log10(math.sqrt((1 - c - s) ** 2 + (c - s) ** 2) / 2)


def wedge_db(f, slope_deg, run_m, h_tx, h_rx):
    k = 2 * math.pi * f * 1e6 / C0
    a = math.radians(slope_deg)
    n = (math.pi + 2 * a) / math.pi
    top = run_m * math.tan(a)
    src, obs = np.array([-run_m, -top + h_tx]), np.array([run_m, -top + h_rx])
    s1, s2 = np.hypot(*src), np.hypot(*obs)
    phi1 = abs(math.pi + a - math.atan2(src[1], src[0]) % (2 * math.pi))
    phi2 = math.pi + a - math.atan2(obs[1], obs[0])
    big = s1 * s2 / (s1 + s2)

    def transition(x):
        r = np.sqrt(x)
        s, c = fresnel(r * math.sqrt(2 / math.pi))
        return 2j * r * np.exp(1j * x) * math.sqrt(math.pi / 2) * ((0.5 - c) - 1j * (0.5 - s))

    def term(beta, sign):
        m = round((beta + sign * math.pi) / (2 * math.pi * n))
        b = 2 * math.cos((2 * math.pi * n * m - beta) / 2) ** 2
        return 1 / math.tan((math.pi + sign * beta) / (2 * n)) * transition(k * big * b)

    minus, plus = phi2 - phi1, phi2 + phi1
    d = -np.exp(-0.25j * math.pi) / (2 * n * math.sqrt(2 * math.pi * k)) * (
        term(minus, 1) + term(minus, -1) + term(plus, 1) + term(plus, -1))
    return -20 * math.log10(abs(d / math.sqrt(s1 * s2)) * math.sqrt(np.hypot(*(obs - src))))


def write(directory, name, head, columns, rows):
    text = ''.join('# %s\n' % h for h in head) + '# made by: src/test/reference/full_wave_rows.py\n' + columns + '\n'
    text += ''.join(','.join(str(c) for c in r) + '\n' for r in rows)
    Path(directory, name).write_text(text, encoding='utf-8')


def main(directory):
    rows = [(pol, f, e, s, h, 1.5, d, '%.4f' % norton_db(d, h, 1.5, f, e, s, pol))
            for pol in 'VH' for f in (50, 146, 446, 900) for e, s in ((15, 0.005), (4, 0.001), (80, 5))
            for h in (1.5, 10) for d in (210, 600, 1500, 4800, 9990)]
    write(directory, 'full-wave-norton.csv', [
        'source: Norton, Proc. IRE 25 (1937) 1203; level ground, no earth curvature', 'units: MHz, S/m, m, dB over free space; rounded to 0.0001 dB'],
        'polarization,frequency_mhz,permittivity,conductivity,tx_height_m,rx_height_m,distance_m,excess_db', rows)
    a_m = 4 / 3 * 6371e3
    rows = [(pol, f, 15, 0.005, h, 1.5, d, '%.4f' % sphere_db(d * 1e3, h, 1.5, f, 15, 0.005, pol, a_m))
            for pol in 'VH' for f in (146, 446) for h in (1.5, 10) for d in (6, 9, 15, 21, 30)]
    rows.append(('V', 150, 22, 0.003, 1.5, 1.5, 30, '%.4f' % sphere_db(30e3, 1.5, 1.5, 150, 22, 0.003, 'V', 8500e3)))
    print('30 km row, another program says 64.44:', rows[-1][-1])
    rows = [r + ((4 / 3 if r[1] != 150 else 8500 / 6371),) for r in rows]
    write(directory, 'full-wave-sphere-residue.csv', [
        'source: residue series over an impedance sphere, Fock (1965), 300 terms', 'units: MHz, S/m, m, km, dB over free space (rounded to 0.0001), effective over true earth radius'],
        'polarization,frequency_mhz,permittivity,conductivity,tx_height_m,rx_height_m,distance_km,excess_db,k', rows)
    rows = []
    for f in (146, 446):
        for h in (-20, 0, 50, 150):
            nu = h * math.sqrt(2 * 5000 / (C0 / f / 1e6 * 2500 * 2500))
            rows.append((f, h, '%.4f' % screen_db(nu)))
    write(directory, 'full-wave-screen-fresnel.csv', [
        'source: half plane, Fresnel integrals, Rec. ITU-R P.526 section 4.1; edge in the middle of 5 km', 'units: MHz, edge over the ray m, dB over free space'],
        'frequency_mhz,edge_m,excess_db', rows)
    rows = [(f, slope, h, '%.4f' % wedge_db(f, slope, 2000, 40, h))
            for f in (146, 446) for slope in (3, 5, 10, 15, 20) for h in (20, 40, 60)]
    write(directory, 'full-wave-wedge-utd.csv', [
        'source: hard wedge, Kouyoumjian and Pathak, Proc. IEEE 62 (1974) 1448; crest midway in 4 km, source 40 m over the near face',
        'units: MHz, slope of both faces degrees, receiver over the far face m, dB over free space'],
        'frequency_mhz,slope_deg,rx_height_m,excess_db', rows)
    mpmath.mp.dps = 40
    rows = []
    for r in (0.01, 0.5, 1, 2, 3.5, 5, 7, 12, 40, 1000):
        for deg in (0, 1, 20, 45, 90, 135, 160, 179, 180, 225, 315):
            z = mpmath.mpc(r * mpmath.cos(mpmath.pi * deg / 180), r * mpmath.sin(mpmath.pi * deg / 180))
            if deg > 180 and r > 12:
                continue
            z = mpmath.mpc(float(z.real), float(z.imag))
            w = mpmath.exp(-z * z) * mpmath.erfc(mpmath.mpc(0, -1) * z) if r < 30 else faddeeva_far(z)
            rows.append((repr(float(z.real)), repr(float(z.imag)), mpmath.nstr(w.real, 17), mpmath.nstr(w.imag, 17)))
    write(directory, 'complex-error-function-mpmath.csv', [
        'source: w(z) = exp(-z^2) erfc(-jz), Abramowitz and Stegun 7.1.3, by mpmath with 40 digits', 'rounded to 17 digits'],
        're,im,w_re,w_im', rows)


def faddeeva_far(z):
    """Continued fraction, Abramowitz and Stegun 7.1.15; on the real axis the exp(-x^2) it lacks is below 1e-600."""
    tail = z
    for n in range(200, 0, -1):
        tail = z - mpmath.mpf(n) / 2 / tail
    return mpmath.mpc(0, 1) / mpmath.sqrt(mpmath.pi) / tail


if __name__ == '__main__':
    main(sys.argv[1])
