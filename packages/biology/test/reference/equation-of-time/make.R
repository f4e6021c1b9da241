# Equation of time through a year from a low-precision ephemeris of the sun, by another way than a Fourier series in the day:
# mean longitude minus apparent right ascension (Meeus 1998, Astronomical Algorithms, chapters 25 and 28).
rad <- pi / 180
days <- as.integer(as.Date(c('2026-01-01', '2026-01-20', '2026-02-11', '2026-03-05', '2026-03-20', '2026-04-15', '2026-05-14',
  '2026-06-13', '2026-06-21', '2026-07-26', '2026-09-01', '2026-10-10', '2026-11-03', '2026-12-25')))
eot <- function(day) {
  t <- (day + 0.5 + 2440587.5 - 2451545) / 36525 # noon UTC, Julian centuries
  l0 <- (280.46646 + t * (36000.76983 + 0.0003032 * t)) %% 360
  m <- (357.52911 + t * (35999.05029 - 0.0001537 * t)) * rad
  c <- (1.914602 - t * (0.004817 + 0.000014 * t)) * sin(m) + (0.019993 - 0.000101 * t) * sin(2 * m) + 0.000289 * sin(3 * m)
  lambda <- (l0 + c - 0.00569 - 0.00478 * sin((125.04 - 1934.136 * t) * rad)) * rad
  eps <- (23.439291 - 0.0130042 * t + 0.00256 * cos((125.04 - 1934.136 * t) * rad)) * rad
  alpha <- atan2(cos(eps) * sin(lambda), cos(lambda)) / rad
  d <- (l0 - 0.0057183 - alpha) %% 360
  4 * ifelse(d > 180, d - 360, d)
}
write.table(data.frame(day = days, minutes = sprintf('%.4f', eot(days))), 'noon.csv', sep = ',', row.names = FALSE, quote = FALSE)
