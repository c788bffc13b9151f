# The same job with general tools: data.table reads, base R reduces and fits. Prints the law.
# usage: Rscript with_data_table.R FOLDER [outline]
# With "outline" only what a rate needs; without it the steps of with_pandas.py, one by one (the checksum is
# MD5, which base R has).
suppressMessages(library(data.table))
arguments <- commandArgs(trailingOnly = TRUE)
folder <- arguments[1]
only_outline <- identical(arguments[-1], "outline")
AMBIENT <- 0.101325 # MPa
DENSITY <- 1800 # kg/m3
log <- fread(file.path(folder, "firings.csv"))
setnames(
  log,
  c("outer_diameter [mm]", "core_diameter [mm]", "segment_length [mm]", "throat_diameter [mm]", "propellant_mass [g]"),
  c("outer", "core", "length", "throat", "mass")
)
trapezoid <- function(t, p) sum(diff(t) * (head(p, -1) + tail(p, -1)) / 2)
running_mean <- function(x, width) {
  half <- width %/% 2
  sums <- cumsum(c(0, rep(x[1], half), x, rep(x[length(x)], half)))
  (sums[(2 * half + 2):length(sums)] - sums[1:(length(sums) - 2 * half - 1)]) / (2 * half + 1)
}
slope_of <- function(x, t) {
  n <- length(x)
  c((x[2] - x[1]) / (t[2] - t[1]), (x[3:n] - x[1:(n - 2)]) / (t[3:n] - t[1:(n - 2)]), (x[n] - x[n - 1]) / (t[n] - t[n - 1]))
}

outline <- function(row) {
  trace <- fread(file.path(folder, row$trace))
  t <- trace[[1]]
  p <- trace[[2]]
  p <- p - median(p[t < 0.15])
  above <- which(p > 0.1 * max(p))
  first <- above[1]
  last <- above[length(above)]
  smooth <- running_mean(p, max(5, length(p) %/% 500))
  burnout <- first - 1 + which.min(slope_of(smooth[first:last], t[first:last]))
  web <- (row$outer - row$core) / 2
  duration <- t[burnout] - t[first]
  absolute <- p + AMBIENT
  part <- trapezoid(t[first:burnout], absolute[first:burnout])
  whole <- trapezoid(t[first:last], absolute[first:last])
  c(part / duration, web / duration * part / whole)
}

without_mains <- function(t, p, extent) {
  n <- length(t)
  step <- (t[n] - t[1]) / (n - 1)
  for (mains in c(50, 60)) {
    width <- 2 * floor(0.5 / (mains * step)) + 1
    if (width < 5 || n < 12 * width) next
    inner <- (width + 1):(n - width)
    rest <- (p - running_mean(p, width))[inner]
    keep <- abs(rest) < 5 * 1.482602218505602 * median(abs(rest))
    times <- t[inner][keep]
    kept <- rest[keep]
    for (harmonic in 1:3) {
      turn <- 2 * pi * harmonic * mains * times
      a <- 2 * mean(kept * cos(turn))
      b <- 2 * mean(kept * sin(turn))
      if ((a^2 + b^2) * length(kept) / (4 * mean(kept^2)) > 20 && sqrt(a^2 + b^2) > 1e-3 * extent) {
        turn <- 2 * pi * harmonic * mains * t
        p <- p - a * cos(turn) - b * sin(turn)
      }
    }
  }
  p
}

volume <- function(x, outer, core, length, segments) {
  inner <- pmin(core + 2 * x, outer)
  segments * pi / 4 * (outer^2 - inner^2) * (length - 2 * x)
}

# Both rates [mm/s] with their pressures [MPa], and c* [m/s]; lengths in mm, mass in g, times in s.
rates <- function(t, absolute, events, inputs, segments) {
  area <- pi / 4 * (inputs[4] * 1e-3)^2
  driven <- ifelse(absolute > AMBIENT, absolute, 0) * 1e6 * area
  gone <- c(0, cumsum(0.5 * (driven[-1] + driven[-length(driven)]) * diff(t)))
  velocity <- gone[length(gone)] / (inputs[5] * 1e-3)
  depths <- seq(0, (inputs[1] - inputs[2]) / 2, length.out = 1025)
  burned <- volume(0, inputs[1], inputs[2], inputs[3], segments) - volume(depths, inputs[1], inputs[2], inputs[3], segments)
  web <- approx(burned, depths, gone / velocity / inputs[6] * 1e9, rule = 2, ties = "ordered")$y
  inside <- t >= events[1] & t <= events[2]
  even <- which(web >= 0.1 * depths[1025] & web <= 0.9 * depths[1025])
  last <- even[length(even)]
  balance <- (web[last] - web[even[1]]) / (t[last] - t[even[1]])
  c(balance, mean(absolute[even]), depths[1025] / (events[2] - events[1]), mean(absolute[inside]), velocity)
}

whole <- function(row) {
  path <- file.path(folder, row$trace)
  tools::md5sum(path)
  trace <- fread(path)
  t <- trace[[1]]
  p <- trace[[2]]
  n <- length(p)
  intervals <- diff(t)
  if (!all(intervals > 0) || !all(is.finite(p))) stop(row$trace)
  gaps <- sum(intervals > 1.5 * median(intervals))
  clipped <- sum(p == max(p)) > 2
  usual <- as.numeric(runmed(p, 9))
  off <- abs(p - usual)
  extent <- max(usual) - min(usual)
  bend <- p[2:(n - 1)] - 0.5 * (p[1:(n - 2)] + p[3:n])
  noise <- 1.482602218505602 * median(abs(bend)) / sqrt(1.5)
  spikes <- off > 7 * max(1.482602218505602 * median(off), noise) & off > 0.01 * extent
  before <- c(p[(n - 2):n], p[1:(n - 3)])
  after <- c(p[4:n], p[1:3])
  p <- ifelse(spikes & abs(before - after) < 0.5 * off, usual, p)
  p <- without_mains(t, p, extent)
  smooth <- running_mean(p, max(3, n %/% 1000))
  working <- which(smooth > quantile(smooth, 0.05) + 0.1 * extent)
  rise <- working[1]
  fall <- working[length(working)]
  quiet <- p[1:floor(0.9 * rise)]
  tail_off <- p[(fall + (n - fall) %/% 3):n]
  zero <- median(quiet)
  drift <- median(tail_off) - zero
  scatter <- sqrt((1.482602218505602 * median(abs(quiet - zero)))^2 + noise^2)
  if (abs(drift) < 5 * scatter / sqrt(length(tail_off))) drift <- 0
  p <- p - zero - drift * pmin(1, pmax(0, (t - t[rise]) / (t[fall] - t[rise])))
  half <- max(1, n %/% 800)
  smooth <- running_mean(running_mean(p, half), half)
  top <- max(smooth)
  level <- 0.1 * top
  above <- which(smooth > level)
  begin <- above[1]
  end <- above[length(above)]
  slope <- slope_of(smooth, t)
  near <- max(1, begin - half):(begin + 8 * half)
  steepest <- near[which.max(slope[near])]
  tangent <- t[steepest] - smooth[steepest] / slope[steepest]
  late <- (begin + floor(0.5 * (end - begin))):(begin + floor(0.85 * (end - begin)))
  stop_late <- late[length(late)]
  plateau <- .lm.fit(cbind(1, t[late]), smooth[late])$coefficients
  knee <- stop_late - 1 + which.min(slope[stop_late:end])
  falling <- c(smooth[knee] - slope[knee] * t[knee], slope[knee])
  meet <- (falling[1] - plateau[1]) / (plateau[2] - falling[2])
  scale <- top / (t[end] - t[begin])
  bisecting <- tan(0.5 * (atan(plateau[2] / scale) + atan(falling[2] / scale)) + pi / 2) * scale
  rest <- stop_late:end
  line <- plateau[1] + plateau[2] * meet + bisecting * (t[rest] - meet)
  bisector <- t[rest[which.min(abs(line - smooth[rest]))]]
  bending <- slope_of(slope, t)
  curvature <- t[stop_late - 1 + which.min(bending[stop_late:knee])]
  cut <- max(1, begin - 20 * half):min(n, end + 20 * half)
  times <- t[cut]
  absolute <- p[cut] + AMBIENT
  events <- c(t[begin], bisector)
  inputs <- c(row$outer, row$core, row$length, row$throat, row$mass, DENSITY)
  best <- rates(times, absolute, events, inputs, row$segments)
  variance <- numeric(5)
  stds <- c(0.05, 0.05, 0.1, 0.02, 0.005 * row$mass, 10)
  for (index in 1:6) {
    moved <- inputs
    moved[index] <- moved[index] + stds[index]
    variance <- variance + (rates(times, absolute, events, moved, row$segments) - best)^2
  }
  for (change in list(absolute * 1.005, absolute + 0.5 * abs(drift) + noise / sqrt(length(quiet)))) {
    variance <- variance + (rates(times, change, events, inputs, row$segments) - best)^2
  }
  moves <- c(abs(tangent - t[begin]), abs(bisector - curvature)) / sqrt(12)
  for (index in 1:2) {
    moved <- events
    moved[index] <- moved[index] + moves[index]
    variance <- variance + (rates(times, absolute, moved, inputs, row$segments) - best)^2
  }
  c(best[2], best[1], sqrt(variance[1]), gaps, clipped, sum(spikes), best[5])
}

reduce <- if (only_outline) outline else whole
points <- sapply(seq_len(nrow(log)), function(i) reduce(log[i]))
x <- points[1, ]
y <- points[2, ]
u <- log(x)
v <- log(y)
count <- length(y)
fit <- nls(y ~ a * x^n, start = list(a = mean(y), n = 0.4), weights = 1 / y^2)
a <- coef(fit)[["a"]]
n <- coef(fit)[["n"]]
residual <- log(y / (a * x^n))
level <- sum(residual^2) * (1 + qt(0.975, count - 2)^2 / (count - 2))
excess <- function(n) sum((v - n * u - mean(v - n * u))^2) - level
lower <- uniroot(excess, c(n - 1, n))$root
upper <- uniroot(excess, c(n, n + 1))$root
hinges <- sapply(quantile(u, seq(0.1, 0.9, length.out = 60)), function(knot) {
  sum(.lm.fit(cbind(1, u, pmax(0, u - knot)), v)$residuals^2)
})
gain <- (sum(residual^2) - min(hinges)) / min(hinges) * (count - 4) / 2
left_out <- sapply(seq_len(count), function(i) v[i] - sum(.lm.fit(cbind(1, u[-i]), v[-i])$coefficients * c(1, u[i])))
cat(sprintf("a = %.4f mm/s at 1 MPa, n = %.4f (%.4f to %.4f, 95 %%, profile), %d firings\n", a, n, lower, upper, count))
cat(sprintf("one law against two: p = %.2g; left out and foretold: %.2f %%\n", pf(gain, 2, count - 4, lower.tail = FALSE), 100 * sd(left_out)))
