"""Tails, densities and quantiles of the distributions with 60 digits, straight from the formulas. Slow and not clever."""
import csv
from mpmath import mp, mpf, gammainc, beta, loggamma, erfc, sqrt, log, binomial, inf

mp.dps = 60


def write(name, header, rows):
    with open(f'{name}.csv', 'w', newline='') as out:
        table = csv.writer(out, lineterminator='\n')
        table.writerow(header)
        for row in rows:
            table.writerow([mp.nstr(mpf(value), 20, strip_zeros=True, min_fixed=-5, max_fixed=20) for value in row])


def double(x):
    return mpf(float(x))


# log gamma, near its zeros and far out.
points = [1e-300, 1e-8, 1e-3, 0.1, 0.4999, 0.5, 0.50001, 0.75, 0.999, 1 - 1e-9, 1 + 1e-9, 1.001, 1.4616321449683622,
          1.4999, 1.5, 1.75, 1.999999, 2.000001, 2.25, 2.5, 2.75, 3.3, 5.5, 9.99, 10, 10.01, 33.3, 170.6, 1e4, 1e7, 1e15]
write('log-gamma', ['x', 'logGamma'], [(double(x), loggamma(double(x)).real) for x in points])

# Regularised incomplete gamma.
rows = []
for a in [0.001, 0.1, 0.3, 0.5, 0.75, 1, 1.5, 2, 5, 10.5, 50, 123.4, 1000, 20000]:
    spread = a ** 0.5
    for x in [a * 1e-3, a * 0.1, a * 0.5, max(a - 5 * spread, a * 0.2), a - spread if a > 1 else a * 0.7, a, a + 0.5, a + 1, a + spread,
              a + 5 * spread, a + 12 * spread, a * 3 + 20]:
        a_, x_ = double(a), double(x)
        lower = gammainc(a_, 0, x_, regularized=True)
        upper = gammainc(a_, x_, inf, regularized=True)
        if lower > mpf(10) ** -300 and upper > mpf(10) ** -300:
            rows.append((a_, x_, lower, upper))
write('incomplete-gamma', ['a', 'x', 'lower', 'upper'], rows)


def beta_series(a, b, x):
    """I_x(a, b) by its series of positive terms, Abramowitz & Stegun 26.5.4 in another form."""
    term = total = mpf(1)
    n = 0
    while term > total * mpf(10) ** -50:
        term *= (a + b + n) / (a + 1 + n) * x
        total += term
        n += 1
    return x ** a * (1 - x) ** b / (a * beta(a, b)) * total


def beta_tails(a, b, x):
    if x <= a / (a + b):
        lower = beta_series(a, b, x)
        return lower, 1 - lower
    upper = beta_series(b, a, 1 - x)
    return 1 - upper, upper


rows = []
for a, b in [(0.5, 0.5), (0.5, 3), (1, 1), (1, 0.5), (1, 7), (2, 3), (7, 0.5), (2.5, 0.75), (12, 30), (30.5, 200), (500, 2), (400, 600), (3000, 7000)]:
    mean = a / (a + b)
    sd = (mean * (1 - mean) / (a + b + 1)) ** 0.5
    for x in [mean * 1e-4, mean * 0.1, max(mean - 6 * sd, mean * 0.3), max(mean - sd, mean * 0.6), mean, min(mean + sd, (mean + 1) / 2),
              min(mean + 6 * sd, (mean + 3) / 4), 1 - (1 - mean) * 2 ** -12]:
        a_, b_, x_ = double(a), double(b), double(x)
        lower, upper = beta_tails(a_, b_, x_)
        if lower > mpf(10) ** -300 and upper > mpf(10) ** -300:
            rows.append((a_, b_, x_, lower, upper))
write('incomplete-beta', ['a', 'b', 'x', 'lower', 'upper'], rows)

# Normal.
write('normal', ['z', 'lower', 'upper'],
      [(double(z), erfc(-double(z) / sqrt(2)) / 2, erfc(double(z) / sqrt(2)) / 2)
       for z in [-37, -20, -8, -5, -3, -1.959964, -1.7, -1, -0.3, -1e-5, 0, 1e-5, 0.1, 0.67, 1, 1.7320508, 1.74, 2.5, 6, 12, 30]])

# Student's t, both tails, also for huge t at few degrees of freedom.
rows = []
for df in [1, 1.5, 2, 3, 4.7, 5, 10, 30, 120, 1000, 5000]:
    for t in [1e-6, 0.01, 0.5, 0.9, 1, 1.3, 2, 3.5, 8, 12.7, 40, 636.6, 1e6, 1e40]:
        df_, t_ = double(df), double(t)
        x = df_ / (df_ + t_ ** 2)
        beyond, within = beta_tails(df_ / 2, mpf(1) / 2, x)
        upper = beyond / 2
        if upper > mpf(10) ** -290:
            rows.append((df_, t_, upper, within))
write('student', ['df', 't', 'upper', 'within'], rows)

# NB2, binomial and Poisson probabilities.
rows = []
for mean in [0.01, 0.5, 3, 9.99, 47, 1000, 1e6]:
    for count in sorted({0, 1, 2, 5, 20, int(mean), int(mean + 5 * mean ** 0.5), int(2 * mean + 10)}):
        rows.append((double(mean), count, count * log(double(mean)) - double(mean) - loggamma(mpf(count + 1)).real))
write('poisson', ['mean', 'count', 'logProbability'], rows)

rows = []
for n in [1, 2, 10, 49, 400, 100000]:
    for p in [1e-8, 0.02, 0.3, 0.5, 0.77, 0.999]:
        for k in sorted({0, 1, n // 3, int(n * p), n - 1, n}):
            p_ = double(p)
            rows.append((n, p_, k, log(binomial(n, k)) + k * log(p_) + (n - k) * log(1 - p_)))
write('binomial', ['trials', 'chance', 'successes', 'logProbability'], rows)

rows = []
for mean in [0.1, 2, 15, 300]:
    for theta in [0.05, 0.5, 1, 4, 100, 1e6]:
        for k in sorted({0, 1, 3, int(mean), int(3 * mean + 5)}):
            m, th = double(mean), double(theta)
            value = loggamma(k + th).real - loggamma(th).real - loggamma(mpf(k + 1)).real + th * log(th / (th + m)) + k * log(m / (th + m))
            rows.append((m, th, k, value))
write('negative-binomial', ['mean', 'theta', 'count', 'logProbability'], rows)
