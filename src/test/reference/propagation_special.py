"""Reference rows from arbitrary-precision functions: Fresnel integrals, knife edge, surface-wave attenuation.

usage: propagation_special.py fresnel | surfacewave
"""
import sys

from mpmath import erfc, exp, fresnelc, fresnels, log10, mp, mpc, mpf, pi, sqrt

mp.dps = 40


def fresnel():
    print("# source: Fresnel integrals, Abramowitz and Stegun 7.3.1, 7.3.2; J: Rec. ITU-R P.526-15 equations (29), (30)")
    print("# made by: src/test/reference/propagation_special.py fresnel (40 digits), rounded to 1e-13 and 1e-6 dB")
    print("x,c,s,j_db")
    for x in ("-8", "-3", "-1.217", "-0.78", "-0.5", "0", "0.3", "0.5", "1", "1.5", "1.59", "1.61", "2.4", "3.7", "5", "10", "29", "40"):
        v = mpf(x)
        c, s = fresnelc(v), fresnels(v)
        j = -20 * log10(sqrt((1 - c - s) ** 2 + (c - s) ** 2) / 2)
        print(f"{x},{mp.nstr(c, 14, min_fixed=-30)},{mp.nstr(s, 14, min_fixed=-30)},{mp.nstr(j, 9, min_fixed=-30)}")


def surface_wave():
    print("# source: Norton (1937), F(w) = 1 - j sqrt(pi w) exp(-w) erfc(j sqrt w), principal root")
    print("# made by: src/test/reference/propagation_special.py surfacewave (40 digits), rounded to 11 digits")
    print("w_re,w_im,f_re,f_im")
    for re, im in (("0", "-1e-8"), ("0.2186", "-1.4688"), ("3.6665", "-100.0385"), ("1", "0"), ("12", "-0.5"), ("11.9", "-3"),
                   ("15.9", "-1"), ("16.1", "-1"), ("-3", "-2"), ("-20", "-15"), ("-0.4", "-14"), ("200", "-30"), ("-5", "-0.01"),
                   ("0.5", "2"), ("-30", "10"), ("25", "4")):
        w = mpc(re, im)
        f = 1 - 1j * sqrt(pi * w) * exp(-w) * erfc(1j * sqrt(w))
        print(f"{re},{im},{mp.nstr(f.real, 12, min_fixed=-30)},{mp.nstr(f.imag, 12, min_fixed=-30)}")


if __name__ == "__main__":
    {"fresnel": fresnel, "surfacewave": surface_wave}[sys.argv[1]]()
