# The same job with general tools: data.table reads, base R reduces and fits. Prints the law.
# usage: Rscript with_data_table.R FOLDER
suppressMessages(library(data.table))
folder <- commandArgs(trailingOnly = TRUE)[1]
log <- fread(file.path(folder, "firings.csv"))
trapezoid <- function(t, p) sum(diff(t) * (head(p, -1) + tail(p, -1)) / 2)
one <- function(path, web) {
  trace <- fread(file.path(folder, path))
  t <- trace[[1]]
  p <- trace[[2]]
  p <- p - median(p[t < 0.15])
  above <- which(p > 0.1 * max(p))
  first <- above[1]
  last <- above[length(above)]
  width <- max(5, length(p) %/% 500)
  smooth <- cumsum(p)
  smooth <- (smooth[(width + 1):length(p)] - smooth[1:(length(p) - width)]) / width
  inside <- first:(last - width)
  burnout <- first + which.min(diff(smooth[inside])) + width %/% 2
  duration <- t[burnout] - t[first]
  absolute <- p + 0.101325
  part <- trapezoid(t[first:burnout], absolute[first:burnout])
  whole <- trapezoid(t[first:last], absolute[first:last])
  c(part / duration, web / duration * part / whole)
}
webs <- (log[["outer_diameter [mm]"]] - log[["core_diameter [mm]"]]) / 2
points <- mapply(one, log$trace, webs)
x <- points[1, ]
y <- points[2, ]
fit <- nls(y ~ a * x^n, start = list(a = mean(y), n = 0.4), weights = 1 / y^2)
print(summary(fit)$coefficients)
