import { readFileSync } from 'node:fs'
import type { Mapping } from '@thrum/exchange'
import type { Snapshot } from '@thrum/model'
import { wrongInSvg } from './strict-svg.ts'
import { toldInProcess } from './told-command.ts'

export interface Asked {
  readonly figures: number
  readonly wrong: string | null
}

/** What may be asked of any project: who visits, and what differs between the levels of something it compares. */
function questionsOf(snapshot: Snapshot, mapping: Mapping): readonly (readonly string[])[] {
  const factor = mapping.columns.find(({ as }) => as === 'factor')
  const kind = snapshot.kinds[0]?.name
  const between = factor?.factor ?? factor?.header
  return [
    ['who-visits'],
    ...(between === undefined ? [] : [['is-design-sound', `--between=${between}`]]),
    ...(between === undefined || kind === undefined
      ? []
      : [['what-differs', `--between=${between}`, `--kinds=${kind}`, '--worth=2']]),
  ]
}

/** Checks a project that got counts, asks of it, and draws the answers where they are to be drawn. */
export async function askedOf(project: string, snapshot: Snapshot, mapping: Mapping, figure: string | null): Promise<Asked> {
  // What waits is listed, and the first line is told again: as a row, or as one that was set aside.
  const line = Math.min(...snapshot.tables.count.columns.line.values, ...snapshot.tables.setAside.columns.line.values)
  for (const argv of [
    ['check', project],
    ['settle', '--in', project],
    ['history', `mutated.csv:${line}`, '--in', project],
  ]) {
    const { wrong } = await toldInProcess(argv)
    if (wrong !== null) return { figures: 0, wrong }
  }
  let figures = 0
  for (const question of figure === null ? [['who-visits']] : questionsOf(snapshot, mapping)) {
    const told = await toldInProcess(['ask', ...question, '--in', project, ...(figure === null ? [] : ['--figure', figure])])
    if (told.wrong !== null) return { figures, wrong: told.wrong }
    if (figure === null || told.code !== 0) continue
    const wrong = wrongInSvg(readFileSync(figure, 'utf8'))
    if (wrong !== null) return { figures, wrong: `${question[0]}: ${wrong}` }
    figures++
  }
  return { figures, wrong: null }
}
