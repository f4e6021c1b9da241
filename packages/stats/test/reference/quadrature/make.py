"""Gauss-Hermite rules with 60 digits: roots by secant from double precision, weights 2^(n-1) n! sqrt(pi) / (n H(n-1)(x))^2."""
import csv
import numpy
from mpmath import mp, mpf, sqrt, pi, log, factorial, findroot

mp.dps = 60


def hermite(n, x):
    before, value = mpf(1), 2 * x
    for k in range(1, n):
        before, value = value, 2 * x * value - 2 * k * before
    return value, before


with open('gauss-hermite.csv', 'w', newline='') as out:
    table = csv.writer(out, lineterminator='\n')
    table.writerow(['n', 'k', 'node', 'logWeight'])
    for n in [15, 40, 128]:
        for k, near in enumerate(sorted(numpy.polynomial.hermite.hermgauss(n)[0])):
            x = mpf(near)
            for _ in range(8):
                value, before = hermite(n, x)
                x -= value / (2 * n * before)
            weight = log(2) * (n - 1) + log(factorial(n)) + log(pi) / 2 - 2 * log(abs(n * hermite(n, x)[1]))
            table.writerow([n, k, mp.nstr(x, 20) if abs(x) > mpf(10) ** -40 else 0, mp.nstr(weight, 20)])
