/** The page of plain output [columns]. An edge that prints to a narrower terminal sets it once, before anything is printed. */
export const pageWidth = { columns: 80 }

const wide =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u

function columnsOfCharacter(character: string): number {
  if (/\p{M}/u.test(character)) return 0
  return wide.test(character) ? 2 : 1
}

/** Columns a text takes in a terminal: code points, without marks that combine; wide East Asian characters take two. */
export function columnsOf(text: string): number {
  let columns = 0
  for (const character of text) columns += columnsOfCharacter(character)
  return columns
}

/** A word cut into pieces that fit the room, the first piece its own [columns]; marks stay with their letter, no piece is empty. */
function pieces(word: string, first: number, room: number): readonly string[] {
  const found: string[] = []
  let piece = ''
  let columns = 0
  for (const character of word) {
    const own = columnsOfCharacter(character)
    if (piece !== '' && columns + own > (found.length === 0 ? first : room)) {
      found.push(piece)
      piece = ''
      columns = 0
    }
    piece += character
    columns += own
  }
  return [...found, piece]
}

/** A line that begins so is a command to be copied: it stands alone, and is never broken. */
const asItStands = '    '

/** A text broken into lines of a width [columns], each of its own lines a paragraph; words longer than a line are broken. */
export function wrap(text: string, indent = '', hanging = indent, width = pageWidth.columns): readonly string[] {
  return text.split('\n').flatMap((line, k) => {
    const start = k === 0 ? indent : hanging
    return line.startsWith(asItStands) ? [start + line] : wrapParagraph(line, start, hanging, width)
  })
}

function wrapParagraph(text: string, indent: string, hanging: string, width: number): readonly string[] {
  const lines: string[] = []
  const room = width - columnsOf(hanging)
  let line = indent
  let columns = columnsOf(indent)
  let isEmpty = true
  for (const word of text.split(' ').filter((part) => part !== '')) {
    const own = columnsOf(word)
    if (!isEmpty && columns + 1 + own > width) {
      lines.push(line)
      line = hanging
      columns = width - room
      isEmpty = true
    }
    if (!isEmpty) {
      line += ` ${word}`
      columns += 1 + own
      continue
    }
    const parts = pieces(word, width - columns, room)
    for (const part of parts.slice(0, -1)) {
      lines.push(line + part)
      line = hanging
      columns = width - room
    }
    const last = parts.at(-1) ?? ''
    line += last
    columns += columnsOf(last)
    isEmpty = false
  }
  if (!isEmpty) lines.push(line)
  return lines
}

/** Least width of the first column of a table [columns]. */
const leastFirst = 16
/** On a page narrower than this [columns] a table has no columns: the cells of a row stand under its label. */
const stackedBelow = 60

/** The cells of a row under its label: on one line, or where that is too long on one each. */
function stacked([label = '', ...cells]: readonly string[], indent: string): readonly string[] {
  const under = `${indent}  `
  const line = under + cells.filter((cell) => cell !== '').join('  ')
  const lines = columnsOf(line) <= pageWidth.columns ? [line] : cells.flatMap((cell) => wrap(cell, under))
  return [...wrap(label, indent, under), ...lines.filter((own) => own !== under)]
}

/** Rows as columns, numbers to the right; the first column is wrapped where the page is too narrow. */
export function table(rows: readonly (readonly string[])[], indent = '  '): readonly string[] {
  if (pageWidth.columns < stackedBelow) return rows.flatMap((row) => stacked(row, indent))
  const count = rows.reduce((most, row) => Math.max(most, row.length), 0)
  const widths = Array.from({ length: count }, (_, k) => rows.reduce((most, row) => Math.max(most, columnsOf(row[k] ?? '')), 0))
  const others = widths.slice(1).reduce((sum, width) => sum + width + 2, 0)
  const first = Math.max(leastFirst, Math.min(widths[0] ?? 0, pageWidth.columns - indent.length - others))
  return rows.flatMap((row) => {
    const label = wrap(row[0] ?? '', '', '  ', first)
    const cells = row.slice(1).map((cell, k) => ' '.repeat((widths[k + 1] ?? 0) - columnsOf(cell)) + cell)
    const last = label.at(-1) ?? ''
    const padded = last + ' '.repeat(Math.max(0, first - columnsOf(last)))
    return [
      ...label.slice(0, -1).map((line) => indent + line),
      `${indent}${padded}${cells.map((cell) => `  ${cell}`).join('')}`.trimEnd(),
    ]
  })
}
