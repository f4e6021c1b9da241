/**
 * What a file may be at most. The cell limit is that of common spreadsheets (common practice, no source);
 * the others keep a wrong file from filling the memory of a phone or a small server.
 */
export const limits = {
  bytes: 256 * 1024 * 1024,
  cellLength: 32_767,
  columns: 1_000,
  rows: 2_000_000,
  /** Lines that one quoted cell may span before its opening quote is taken for a stray one. */
  linesInCell: 50,
  /** Characters of a refused line that are kept beside its reason; the file itself is kept whole. */
  keptOfLine: 2_000,
} as const
