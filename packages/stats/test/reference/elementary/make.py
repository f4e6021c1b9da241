"""exp, log and log(1 + t) with 60 digits at doubles of the whole range: the nearest double, and what it is short of the value."""
import csv
import math
import random
from mpmath import mp, mpf, exp, log, log1p

mp.dps = 60
rng = random.Random(20261128)


def write(name, f, points):
    with open(f'{name}.csv', 'w', newline='') as out:
        table = csv.writer(out, lineterminator='\n')
        table.writerow(['x', 'nearest', 'short'])
        for x in sorted(set(points)):
            value = f(mpf(x))
            nearest = float(value)
            if math.isinf(nearest):
                continue
            # Units of the nearest double's last place.
            short = float((value - mpf(nearest)) / mpf(math.ulp(nearest)))
            table.writerow([repr(x), repr(nearest), f'{short:.6f}'])


def beside(x, steps):
    """Doubles next to x, `steps` on either side."""
    found = [x]
    up = down = x
    for _ in range(steps):
        up, down = math.nextafter(up, math.inf), math.nextafter(down, -math.inf)
        found += [up, down]
    return found


spread = lambda low, high, n: [rng.uniform(low, high) for _ in range(n)]
# As many per power of two, either sign where asked.
powers = lambda low, high, n: [rng.uniform(1, 2) * 2.0 ** rng.randint(low, high) for _ in range(n)]

# The last results below the least normal double, where doubles thin out, and the ends.
write('exp', exp,
      spread(-745.13, 709.78, 200) + spread(-745.13, -708.39, 60) + spread(-3, 3, 60)
      + powers(-60, 2, 30) + [-x for x in powers(-60, 2, 30)]
      + [1.0, -1.0, 0.5, 5e-324, -5e-324, 709.782712893384, 709.7827128933839, -745.1332191019411, -745.133219101941, -708.3964185322641, -708.3964185322642]
      + [step * math.log(2) / 256 for step in range(-9, 10, 2)])

write('log', log,
      powers(-1022, 1023, 180) + [k * 2.0 ** -1074 for k in (1, 2, 3, 7, 1000, 123456789)] + powers(-1074, -1023, 50)
      + beside(1.0, 10) + spread(0.65, 1.5, 100) + [1 + x for x in powers(-50, -2, 40)] + [1 - x for x in powers(-50, -3, 40)]
      + beside(math.sqrt(0.5), 3) + beside(math.sqrt(2), 3) + [2.0, 10.0, 0.1, 2.2250738585072014e-308, 1.7976931348623157e308, 2.225073858507201e-308]
      + [(k - 0.5) / 128 for k in range(92, 182, 6)])

write('log1p', log1p,
      powers(-1074, -54, 40) + [-x for x in powers(-1074, -54, 40)] + powers(-54, 0, 110) + [-x for x in powers(-54, -2, 90)]
      + powers(0, 1023, 60) + [-x for x in spread(0.2, 1, 60)]
      + [5e-324, -5e-324, 1.1102230246251565e-16, 1.1102230246251568e-16, -5.551115123125783e-17, -0.9999999999999999, 1.0, -0.5, 9007199254740991.0, 1.7976931348623157e308])
