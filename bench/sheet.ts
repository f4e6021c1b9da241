import { closeSync, openSync, writeSync } from 'node:fs'
import { isoDate } from '@thrum/model'
import { createRng } from '@thrum/model/ground'
import { drawNormal, drawPoisson } from '@thrum/stats'

/** How large an invented survey of the Ostrel Vale is: its watches are the product of the five. */
export interface SurveySize {
  readonly fields: number
  readonly plots: number
  readonly seasons: number
  readonly days: number
  readonly slots: number
}

/** What was written of one kind in one field at one level of the strip. */
export interface PlantedCell {
  readonly kind: string
  readonly field: string
  readonly strip: string
  total: number
  minutes: number
}

/** What the answers must give back: every total, told by kind, field and level. */
export interface Planted {
  readonly size: SurveySize
  readonly rows: number
  readonly bytes: number
  readonly fields: readonly string[]
  readonly cells: readonly PlantedCell[]
}

export const rowsOfSize = ({ fields, plots, seasons, days, slots }: SurveySize): number => fields * plots * seasons * days * slots

/** Kinds of the sheet: how many come to a watch of ten minutes, and how many times as many where there is a strip. */
export const kinds = [
  { name: 'honey bee', mean: 2.4, ratio: 1 },
  { name: 'bumble bee', mean: 1.2, ratio: 2 },
  { name: 'small solitary bee', mean: 0.6, ratio: 1.4 },
  { name: 'hover fly', mean: 0.9, ratio: 1 },
] as const

export const strips = ['no', 'yes'] as const
const observers = ['observer A', 'observer B', 'observer C', 'observer D'] as const
const minutesOfWatch = 10
/** Rows whose text is written at once. */
const rowsOfPiece = 4000

const two = (number: number): string => String(number).padStart(2, '0')

export const fieldName = (place: number): string => `Ostrel ${two(place + 1)}`

/**
 * Writes a wide sheet of watches, one row each, row by row to its file: in every field half of the plots lie at a strip, and
 * each plot is watched on the same days at the same times, so that nothing is tangled with the strip.
 */
export function writeSheet(path: string, size: SurveySize, seed: string, firstSeason = 2027): Planted {
  const rng = createRng(seed)
  const fields = Array.from({ length: size.fields }, (_, k) => fieldName(k))
  const effects = fields.map(() => kinds.map(() => Math.exp(drawNormal(rng, 0, 0.3))))
  const cells = kinds.flatMap(({ name: kind }) =>
    fields.flatMap((field) => strips.map((strip): PlantedCell => ({ kind, field, strip, total: 0, minutes: 0 }))),
  )
  const file = openSync(path, 'w')
  let bytes = 0
  let lines = [
    `field,plot,date,start,minutes,observer,crop,strip,stage,flowers,temperature,${kinds.map(({ name }) => name).join(',')}`,
  ]
  const flush = (): void => {
    bytes += writeSync(file, `${lines.join('\n')}\n`)
    lines = []
  }
  for (let season = 0; season < size.seasons; season++) {
    const firstDay = Math.round(Date.UTC(firstSeason + season, 5, 1) / 86_400_000)
    for (let day = 0; day < size.days; day++) {
      const date = isoDate(firstDay + day)
      const stage = 61 + Math.floor((8 * day) / size.days)
      for (let field = 0; field < size.fields; field++) {
        for (let plot = 0; plot < size.plots; plot++) {
          const strip = plot % strips.length
          for (let slot = 0; slot < size.slots; slot++) {
            const minute = 600 + Math.floor((300 * slot) / size.slots)
            const counts = kinds.map(({ mean, ratio }, kind) => {
              const expected = mean * (effects[field]?.[kind] ?? 1) * (strip === 1 ? ratio : 1)
              const count = drawPoisson(rng, expected)
              const cell = cells[(kind * size.fields + field) * strips.length + strip]
              if (cell !== undefined) {
                cell.total += count
                cell.minutes += minutesOfWatch
              }
              return count
            })
            const flowers = 80 + rng.below(200)
            const temperature = 19 + rng.below(60) / 10
            const observer = observers[(day + field + (plot >> 1) + slot) % observers.length]
            const start = `${two(Math.floor(minute / 60))}:${two(minute % 60)}`
            lines.push(
              `${fields[field]},P${plot + 1},${date},${start},${minutesOfWatch},${observer},sunflower,${strips[strip]},${stage},${flowers},${temperature},${counts.join(',')}`,
            )
            if (lines.length === rowsOfPiece) flush()
          }
        }
      }
    }
  }
  if (lines.length > 0) flush()
  closeSync(file)
  return { size, rows: rowsOfSize(size), bytes, fields, cells }
}
