E <- function(h, d, a) sum(h * exp(-d / a))
out <- do.call(rbind, lapply(c(spring = 246.5, summer = 1078, autumn = 637.5), function(a) {
  t <- c(E(c(10, 4), c(50, 900), a), E(c(8, 4), c(120, 1400), a))
  c <- c(E(c(10, 8, 4), c(1500, 1800, 700), a), E(c(10, 8, 4), c(2600, 2200, 1900), a))
  data.frame(a, treated1 = t[1], treated2 = t[2], control1 = c[1], control2 = c[2], ratio = mean(c) / mean(t),
    move300to10 = exp(-10 / a) / exp(-300 / a), near = exp(-3 / a) / exp(-100 / a), far = exp(-3 / a) / exp(-1000 / a))
}))
print(format(out, digits = 12))
