import type { Answer } from '@thrum/model'

/** R that every receipt begins with: what it is, and how it compares. Base R, but for models of counts. */
function opening({ question, receipt }: Answer): string {
  return `# Receipt of an answer of Thrum ${receipt.thrum}. Recomputes its numbers from the tables beside this file, with base R
# only; models of counts, where there are any, with the package glmmTMB, and they are skipped without it.
# Run it in the folder that holds the tables:  Rscript receipt.R
# Question ${question}; digest of the data ${receipt.digest}
# Options ${JSON.stringify(receipt.options)}; seed ${JSON.stringify(receipt.seed)} (${receipt.random})
disagreed <- 0
checked <- 0
read <- function(name) {
  text <- intersect(names(read.csv(name, nrows = 1, check.names = FALSE)), c("address", "field", "block", "level", "period", "group", "kind", "pair"))
  read.csv(name, check.names = FALSE, colClasses = setNames(rep("character", length(text)), text))
}
check <- function(what, got, said, within = 1e-6) {
  ok <- length(got) == length(said) && all(is.na(said) | (!is.na(got) & (got == said | abs(got - said) <= within * pmax(abs(said), 1e-9))))
  cat(sprintf("%-8s %s: %s, the answer says %s\\n", if (ok) "agrees" else "DIFFERS", what,
    paste(signif(got, 7), collapse = " "), paste(signif(said, 7), collapse = " ")))
  checked <<- checked + 1
  if (!ok) disagreed <<- disagreed + 1
}
`
}

const closing = `
if (checked == 0) cat("Nothing in this answer is a number that can be recomputed.\\n")
cat(if (disagreed == 0) "The receipt agrees with the answer.\\n" else "The receipt DIFFERS from the answer.\\n")
quit(status = if (disagreed == 0) 0 else 1)
`

export function rScript(answer: Answer, body: readonly string[]): string {
  return `${opening(answer)}\n${body.join('\n')}\n${closing}`
}
