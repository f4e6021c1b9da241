# Makes networks.csv from Flower_visits.csv and Networks.csv of the deposit: Rscript extract.R <folder of the deposit>
from <- commandArgs(trailingOnly = TRUE)[1]
visits <- read.csv(file.path(from, "Flower_visits.csv"), fileEncoding = "latin1", stringsAsFactors = FALSE)
networks <- read.csv(file.path(from, "Networks.csv"), fileEncoding = "latin1", stringsAsFactors = FALSE)
first <- function(network) {
  written <- visits$Date[visits$Network_no == network]
  written[order(as.Date(written, "%d/%m/%y"))][1]
}
networks$Date <- sapply(networks$Network, first)
networks$Visits <- sapply(networks$Network, function(network) sum(visits$Network_no == network))
write.csv(networks[, c("Network", "Plot", "Altitude_m", "Observer", "Date", "Observation_time", "Visits")], "networks.csv", row.names = FALSE, quote = FALSE)
