/** Three plain letters or more in a row: enough to be a word that bypassed the catalogue. */
const run = /[A-Za-z]{3,}/gu

/** Digests and ids of facts, whole or their first digits. */
const hexadecimal = /\b(?=[a-f]*\d)[0-9a-f]{12}[0-9a-f]*\b|\b[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}\b/gu

/** All runs of plain letters in texts that come from data, from the person, or from declared lists. */
export function namesIn(...texts: readonly string[]): ReadonlySet<string> {
  return new Set(texts.flatMap((text) => text.match(run) ?? []))
}

/**
 * Lines of output in the pseudo-language that hold plain letters which are no name: each as `<letters>: <line>`.
 */
export function plainLetters(output: string, names: ReadonlySet<string>): readonly string[] {
  return output.split('\n').flatMap((line) =>
    // The line for programs stands beside the sentence that says the verdict in words.
    /^verdict: [a-z-]+$/u.test(line)
      ? []
      : (line.replace(hexadecimal, '').match(run) ?? [])
          .filter((letters) => !names.has(letters))
          .map((letters) => `${letters}: ${line.trim()}`),
  )
}
