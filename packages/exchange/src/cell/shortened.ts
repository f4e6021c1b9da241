/** The beginning of a text, with an ellipsis where more was written. No half of a character is left at the cut. */
export function shortened(text: string, most: number): string {
  if (text.length <= most) return text
  const start = text.slice(0, most - 1)
  return `${/[\ud800-\udbff]$/u.test(start) ? start.slice(0, -1) : start}…`
}

/** Characters of a cell that are shown in a sentence; the file keeps it whole. */
export const shownOfCell = 200
