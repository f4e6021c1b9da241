import { columnsOf, pageWidth, wrap } from '@thrum/report'

const fits = (line: string): boolean => columnsOf(line) <= pageWidth.columns

/** A command and what it does: beside it, or below it where the line would be too long. The command itself is never broken. */
export function commandLine(text: string): readonly string[] {
  const line = `  ${text}`
  if (fits(line)) return [line]
  const end = line.indexOf(': ') + 1
  return [line.slice(0, end), ...wrap(line.slice(end), '      ')]
}

interface Part {
  /** A command, or an option, as it stands; empty in prose. */
  readonly head: string
  readonly prose: readonly string[]
}

/** A line is a command, an option, more of what was said before it, or prose. */
function readPart(line: string, program: string): Part {
  const isHead = line.startsWith(`${program} `) || /^(?: {4}\S| {2}-)/u.test(line)
  if (!isHead) return { head: '', prose: [line.trim()] }
  const gap = line.trimStart().search(/ {2,}/u)
  if (gap < 0) return { head: line, prose: [] }
  const end = line.length - line.trimStart().length + gap
  return { head: line.slice(0, end), prose: [line.slice(end).trim()] }
}

/** The help of a command, which is laid out for the usual page: as it stands where it fits, else anew. */
export function helpLines(text: string): readonly string[] {
  const lines = text.split('\n')
  if (lines.every(fits)) return lines
  const program = text.split(' ')[0] ?? ''
  const parts: Part[] = []
  for (const line of lines) {
    const part = readPart(line, program)
    const before = parts.at(-1)
    const goesOn = line.startsWith('      ') || before?.head === ''
    if (part.head === '' && before !== undefined && goesOn) {
      parts[parts.length - 1] = { ...before, prose: [...before.prose, ...part.prose] }
    } else parts.push(part)
  }
  return parts.flatMap(({ head, prose }) => [
    ...(head === '' ? [] : [head]),
    ...wrap(prose.join(' '), head === '' ? '' : '      '),
  ])
}
