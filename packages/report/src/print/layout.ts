/** Width of plain output [columns]. */
export const pageWidth = 80

/** Columns a text takes in a terminal: code points, without marks that combine; wide East Asian characters take two. */
export function columnsOf(text: string): number {
  let columns = 0
  for (const character of text) {
    if (/\p{M}/u.test(character)) continue
    columns += /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]/u.test(character)
      ? 2
      : 1
  }
  return columns
}

/** A paragraph broken into lines of the page's width; words longer than a line are broken. */
export function wrap(text: string, indent = '', hanging = indent): readonly string[] {
  const lines: string[] = []
  let line = indent
  let isEmpty = true
  for (const word of text.split(' ').filter((part) => part !== '')) {
    let rest = word
    if (!isEmpty && columnsOf(line) + 1 + columnsOf(rest) > pageWidth) {
      lines.push(line)
      line = hanging
      isEmpty = true
    }
    while (isEmpty && columnsOf(line) + columnsOf(rest) > pageWidth && rest.length > 1) {
      const room = Math.max(1, pageWidth - columnsOf(line))
      lines.push(line + [...rest].slice(0, room).join(''))
      rest = [...rest].slice(room).join('')
      line = hanging
    }
    line += isEmpty ? rest : ` ${rest}`
    isEmpty = false
  }
  if (!isEmpty) lines.push(line)
  return lines
}

/** Rows as columns, numbers to the right; the first column is wrapped where the page is too narrow. */
export function table(rows: readonly (readonly string[])[], indent = '  '): readonly string[] {
  const count = rows.reduce((most, row) => Math.max(most, row.length), 0)
  const widths = Array.from({ length: count }, (_, k) => rows.reduce((most, row) => Math.max(most, columnsOf(row[k] ?? '')), 0))
  const others = widths.slice(1).reduce((sum, width) => sum + width + 2, 0)
  const first = Math.max(16, Math.min(widths[0] ?? 0, pageWidth - indent.length - others))
  return rows.flatMap((row) => {
    const label = wrap(row[0] ?? '', '', '  ').flatMap((line) => chunk(line, first))
    const cells = row.slice(1).map((cell, k) => ' '.repeat((widths[k + 1] ?? 0) - columnsOf(cell)) + cell)
    const last = label.at(-1) ?? ''
    const padded = last + ' '.repeat(Math.max(0, first - columnsOf(last)))
    return [
      ...label.slice(0, -1).map((line) => indent + line),
      `${indent}${padded}${cells.map((cell) => `  ${cell}`).join('')}`.trimEnd(),
    ]
  })
}

/** A line cut at blanks so that no part is longer than the width. */
function chunk(line: string, width: number): readonly string[] {
  const parts: string[] = []
  let part = ''
  for (const word of line.split(' ')) {
    const joined = part === '' ? word : `${part} ${word}`
    if (columnsOf(joined) > width && part !== '') {
      parts.push(part)
      part = `  ${word}`
    } else part = joined
  }
  return [...parts, part]
}
