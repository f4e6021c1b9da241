import { isoDate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import type { AdjustedFor } from '../contrast/adjustment.ts'
import { meansOver } from '../nuisance/frame.ts'
import { middleOfDay, type NuisanceName, nuisancesOf } from '../nuisance/nuisance.ts'
import type { Tangle } from '../nuisance/tangle.ts'
import { type AuditInput, type Finding, softened } from './finding.ts'

/** Inflation of the variance of the asked contrast from which a nuisance is noted, warned of, and blocks (product charter). */
export const notedFrom = 1.5
export const warnedFrom = 2.5
export const blockedAbove = 10
/** Fewest degrees of freedom with which levels that do not overlap can still be adjusted. */
const leastFreedom = 2

/** Degrees of freedom left to the contrast once the nuisance's columns have entered. */
function freedomAfter({ design }: AuditInput, tangle: Tangle): number {
  const fields = design.fields.length
  if (design.structure === 'within-fields' || design.structure === 'before-after') return fields - 1 - tangle.columns
  return fields - design.blocks.length - (design.levels.length - 1) - tangle.columns
}

function severityOf(input: AuditInput, tangle: Tangle): Finding['severity'] | null {
  if (tangle.inflation > blockedAbove) return 'block'
  if (tangle.apart && tangle.inflation > notedFrom && freedomAfter(input, tangle) < leastFreedom) return 'block'
  if (tangle.inflation >= warnedFrom) return 'warn'
  return tangle.inflation > notedFrom ? 'note' : null
}

export const nuisanceSaying = (name: AdjustedFor): Saying => saying(`survey/nuisance/${name}`)

/** How a nuisance reads at one level: its mean as a date, a code, an hour, degrees, or a share. */
function readingAt(input: AuditInput, name: NuisanceName, level: number): Saying {
  const { snapshot, design } = input
  const nuisance = nuisancesOf(snapshot, design).find((own) => own.name === name)
  const controlled = design.structure === 'before-after-control'
  const columns =
    name === 'date'
      ? [Float64Array.from(design.rows, (row) => snapshot.tables.count.columns.date.values[row] ?? Number.NaN)]
      : nuisance?.columns
  const column = columns?.[0] ?? new Float64Array()
  const meanWhere = (inside: (k: number) => boolean): number =>
    meansOver(
      1,
      new Int32Array(column.length),
      design.effort,
      column.map((value, k) => (inside(k) ? value : Number.NaN)),
    )[0] ?? Number.NaN
  const at = (k: number): boolean => design.levelOf[k] === level
  if (controlled) {
    const change = meanWhere((k) => at(k) && design.periodOf[k] === 1) - meanWhere((k) => at(k) && design.periodOf[k] === 0)
    return saying(`survey/reading/change/${name}`, { value: change })
  }
  const mean = meanWhere(at)
  if (Number.isNaN(mean)) return saying('survey/reading/none')
  if (name === 'date') return saying('survey/reading/date', { value: isoDate(Math.round(mean)) })
  if (name === 'hour') return saying('survey/reading/hour', { value: mean + middleOfDay })
  return saying(`survey/reading/${name}`, { value: mean })
}

function cureOf(input: AuditInput, name: NuisanceName): Saying {
  const { structure } = input.design
  if (structure === 'before-after') return saying('survey/cure/controls')
  if (structure === 'before-after-control') return saying('survey/cure/same-days-both-arms')
  return saying(`survey/cure/${structure === 'within-fields' ? 'within' : 'between'}/${name}`)
}

function findingOf(input: AuditInput, tangle: Tangle, severity: Finding['severity']): Finding {
  const { design } = input
  return {
    code: 'tangled',
    severity,
    text: saying(`survey/audit/tangled/${severity}${tangle.inflation === Number.POSITIVE_INFINITY ? '/lost' : ''}`, {
      nuisance: tangle.nuisances.map(nuisanceSaying),
      levelA: design.levels[0] ?? '',
      levelB: design.levels[tangle.level] ?? '',
      readings: tangle.nuisances.map((name) =>
        saying('survey/reading/both', {
          name: nuisanceSaying(name),
          a: readingAt(input, name, 0),
          b: readingAt(input, name, tangle.level),
        }),
      ),
      inflation: tangle.inflation === Number.POSITIVE_INFINITY ? 0 : tangle.inflation,
    }),
    rows: Array.from(design.rows),
    cure: cureOf(input, tangle.nuisances[0] ?? 'date'),
  }
}

interface Graded {
  readonly tangle: Tangle
  readonly severity: Finding['severity']
}

/**
 * Each nuisance alone; date and stage as one finding where both are equally grave, or where only the pair is grave: bloom
 * goes with the date, and a person reads one sentence of it.
 */
function toTell(graded: readonly Graded[]): readonly Graded[] {
  const pair = graded.find(({ tangle }) => tangle.nuisances.length === 2)
  if (pair === undefined) return graded
  const parts = graded.filter(
    ({ tangle }) => tangle.nuisances.length === 1 && pair.tangle.nuisances.includes(tangle.nuisances[0] ?? 'date'),
  )
  const pairIsGraver = parts.every(({ severity }) => severity !== pair.severity)
  const bothAsGrave = parts.length === 2 && parts.every(({ severity }) => severity === pair.severity)
  if (bothAsGrave) return graded.filter((own) => !parts.includes(own))
  return pairIsGraver ? graded : graded.filter((own) => own !== pair)
}

/** What is tangled with the contrast asked: each nuisance, and date with stage as a pair. */
export function tangled(input: AuditInput): readonly Finding[] {
  const { design, tangles } = input
  if (tangles.lost && design.rows.length > 0) {
    return [
      softened(
        {
          code: 'tangled',
          severity: 'block',
          text: saying('survey/audit/tangled/blocks', { blocks: design.blocks.join('; ') }),
          rows: Array.from(design.rows),
          cure: saying('survey/cure/levels-in-each-block'),
        },
        input.relative,
      ),
    ]
  }
  const graded = tangles.found.flatMap((tangle) => {
    const severity = severityOf(input, tangle)
    return severity === null ? [] : [{ tangle, severity }]
  })
  return toTell(graded).map(({ tangle, severity }) => softened(findingOf(input, tangle, severity), input.relative))
}

/** Before and after without control: whatever else changed in that time looks like the change asked about. */
export function noControl(input: AuditInput): readonly Finding[] {
  const { design, tangles } = input
  if (design.structure !== 'before-after') return []
  const aliased = tangles.found.some(
    (tangle) => tangle.inflation > blockedAbove && tangle.nuisances.some((name) => name === 'date' || name === 'stage'),
  )
  const finding: Finding = {
    code: 'no-control',
    severity: aliased ? 'block' : 'warn',
    text: saying('survey/audit/no-control', { fields: design.fields.length }),
    rows: Array.from(design.rows),
    cure: saying('survey/cure/controls'),
  }
  return [softened(finding, input.relative)]
}

/** Nuisances that could not be looked at, because some units have nothing recorded. */
export function unchecked({ tangles, design }: AuditInput): readonly Finding[] {
  if (tangles.unchecked.length === 0) return []
  return [
    {
      code: 'not-checked',
      severity: 'note',
      text: saying('survey/audit/not-checked', { nuisances: tangles.unchecked.map(nuisanceSaying) }),
      rows: Array.from(design.rows),
      cure: saying('survey/cure/record-them'),
    },
  ]
}

/** A year, or a date, is everything that differed in it. */
export function everythingDiffered({ design }: AuditInput): readonly Finding[] {
  const about = design.factor?.about
  if (about !== 'season' && about !== 'date') return []
  return [
    {
      code: 'everything-differed',
      severity: 'note',
      text: saying(`survey/audit/everything-differed/${about}`),
      rows: [],
      cure: null,
    },
  ]
}
