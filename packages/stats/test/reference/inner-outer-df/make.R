# Denominator degrees of freedom of lme, beside the tables they are of. Run inside this folder.
suppressMessages(library(nlme))
unlink("values.txt")
say <- function(name, fit) cat(name, fit$fixDF$X[-1], "\n", file = "values.txt", append = TRUE)
keep <- function(name, d) write.csv(d, paste0(name, ".csv"), row.names = FALSE, quote = FALSE)

oats <- data.frame(block = as.character(Oats$Block), variety = gsub(" ", "", as.character(Oats$Variety)), dose = as.character(Oats$nitro), yield = Oats$yield)
oats$plot <- paste(oats$block, oats$variety)
keep("oats", oats)
say("split-plot", lme(yield ~ variety * dose, random = ~ 1 | block / variety, data = oats))

growth <- data.frame(child = as.character(Orthodont$Subject), sex = as.character(Orthodont$Sex), age = Orthodont$age, distance = Orthodont$distance)
keep("growth", growth)
say("between-and-within", lme(distance ~ sex * age, random = ~ 1 | child, data = growth))
holes <- growth[-c(3, 4, 8, 17, 18, 19, 20, 41, 55, 90, 91, 92), ]
say("unbalanced", lme(distance ~ sex * age, random = ~ 1 | child, data = holes))
say("no-slope-fixed", lme(distance ~ sex, random = ~ 1 | child, data = holes))

pixel <- data.frame(dog = as.character(Pixel$Dog), side = as.character(Pixel$Side), day = Pixel$day, pixel = Pixel$pixel)
pixel$lobe <- paste(pixel$dog, pixel$side)
keep("pixel", pixel)
say("nested-side", lme(pixel ~ side + day, random = ~ 1 | dog / side, data = pixel))
