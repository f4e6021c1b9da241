/** What the writer tells the one who will kill it, a line of JSON each. */
export type WriterLine =
  | { readonly kind: 'ready' }
  | { readonly kind: 'begin'; readonly ids: readonly string[] }
  | { readonly kind: 'done'; readonly ids: readonly string[] }
  | { readonly kind: 'kept'; readonly hash: string }
  | { readonly kind: 'brought'; readonly file: string }

/** Everything told before the kill. A last line without its end was cut off by the kill and acknowledges nothing. */
export function readLines(text: string): readonly WriterLine[] {
  return text
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as WriterLine)
}
