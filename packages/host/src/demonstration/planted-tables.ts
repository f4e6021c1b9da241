import { isoDate } from '@thrum/model'
import { seasons } from './calendar.ts'
import type { CropSample } from './crop-samples.ts'
import type { PlantedTable } from './fact-writer.ts'
import type { HabitatBloom } from './habitat.ts'
import { clockOffset, plantedFields } from './places.ts'
import { plantedKinds } from './planted-truths.ts'
import type { Voucher } from './second-look.ts'
import type { DayWeather, WatchSky } from './sky.ts'
import type { Spray } from './spray-diary.ts'
import { plotArea } from './visitors.ts'
import { type Watch, watchMinutes } from './watches.ts'

/** Cells of one column from rows. */
const column = <R, C>(rows: readonly R[], cell: (row: R, k: number) => C): readonly C[] => rows.map(cell)
/** Line of the sheet a row would have: headers stand in line 1. */
const lines = (rows: readonly unknown[]): readonly number[] => rows.map((_, k) => k + 2)

const fieldName = (watch: Watch): string => plantedFields[watch.field]?.name ?? ''

/** The 160 counts: every column that a careful observer fills in. */
export function countTable(watches: readonly Watch[], skies: readonly WatchSky[], flowers: readonly number[]): PlantedTable {
  return {
    table: 'count',
    columns: {
      field: column(watches, fieldName),
      plot: column(watches, ({ position }) => `${position} 1`),
      visit: column(watches, (watch) => `${fieldName(watch)}, ${isoDate(watch.date)}`),
      key: column(watches, (_, k) => `count ${k + 1}`),
      observer: column(watches, ({ observer }) => `observer ${observer}`),
      crop: column(watches, ({ crop }) => crop),
      cultivar: column(watches, ({ field }) => plantedFields[field]?.cultivar ?? null),
      season: column(watches, ({ season }) => seasons[season] ?? null),
      method: column(watches, () => 'timed watch at a marked plot'),
      unit: column(watches, () => 'individuals'),
      position: column(watches, ({ position }) => position),
      rain: column(watches, () => 'none'),
      flowersHow: column(watches, () => 'counted'),
      zeros: column(watches, () => 'typed'),
      date: column(watches, ({ date }) => date),
      start: column(watches, ({ start }) => start),
      end: column(watches, ({ start }) => start + watchMinutes),
      offset: column(watches, () => clockOffset),
      minutes: column(watches, () => watchMinutes),
      flowers,
      area: column(watches, ({ crop }) => plotArea[crop]),
      temperature: column(skies, ({ temperature }) => temperature),
      wind: column(skies, ({ wind }) => wind),
      cloud: column(skies, ({ cloud }) => cloud),
      stage: column(watches, ({ stage }) => stage),
      line: lines(watches),
    },
  }
}

/** A tally of every kind in every count, zeros as well. */
export function tallyTable(watches: readonly Watch[], tallies: readonly (readonly number[])[]): PlantedTable {
  const rows = watches.flatMap((_, watch) =>
    plantedKinds.map(({ name }, kind) => ({ watch, name, number: tallies[kind]?.[watch] ?? 0 })),
  )
  return {
    table: 'tally',
    columns: {
      kind: column(rows, ({ name }) => name),
      count: column(rows, ({ watch }) => watch),
      number: column(rows, ({ number }) => number),
      line: column(rows, ({ watch }) => watch + 2),
    },
  }
}

export function voucherTable(vouchers: readonly Voucher[], watches: readonly Watch[]): PlantedTable {
  const found = vouchers.flatMap((voucher) => {
    const watch = watches[voucher.watch]
    return watch === undefined ? [] : [{ ...voucher, field: fieldName(watch), date: watch.date }]
  })
  return {
    table: 'voucher',
    columns: {
      field: column(found, ({ field }) => field),
      tapped: column(found, ({ tapped }) => tapped),
      determined: column(found, ({ determined }) => determined),
      by: column(found, () => 'determiner 1'),
      how: column(found, ({ how }) => how),
      date: column(found, ({ date }) => date),
      line: lines(found),
    },
  }
}

export function sampleTable(samples: readonly CropSample[]): PlantedTable {
  return {
    table: 'sample',
    columns: {
      field: column(samples, ({ field }) => field),
      plot: column(samples, ({ plot }) => plot),
      treatment: column(samples, ({ treatment }) => treatment),
      flowers: column(samples, ({ flowers }) => flowers),
      fruit: column(samples, ({ fruit }) => fruit),
      weight: column(samples, ({ weight }) => weight),
      date: column(samples, ({ date }) => date),
      line: lines(samples),
    },
  }
}

export function weatherTable(series: readonly DayWeather[]): PlantedTable {
  return {
    table: 'weather',
    columns: {
      station: column(series, () => 'Ostrel Vale'),
      date: column(series, ({ date }) => date),
      minimum: column(series, ({ minimum }) => minimum),
      maximum: column(series, ({ maximum }) => maximum),
      rain: column(series, ({ rain }) => rain),
      line: lines(series),
    },
  }
}

export function habitatTable(blooms: readonly HabitatBloom[]): PlantedTable {
  return {
    table: 'habitat',
    columns: {
      patch: column(blooms, ({ patch }) => patch),
      habitat: column(blooms, ({ habitat }) => habitat),
      latitude: column(blooms, ({ latitude }) => latitude),
      longitude: column(blooms, ({ longitude }) => longitude),
      hectares: column(blooms, ({ hectares }) => hectares),
      bloomFrom: column(blooms, ({ bloomFrom }) => bloomFrom),
      bloomTo: column(blooms, ({ bloomTo }) => bloomTo),
      line: lines(blooms),
    },
  }
}

export function sprayTable(sprays: readonly Spray[]): PlantedTable {
  return {
    table: 'spray',
    columns: {
      field: column(sprays, ({ field }) => field),
      substance: column(sprays, ({ substance }) => substance),
      date: column(sprays, ({ date }) => date),
      start: column(sprays, ({ start }) => start),
      gramsPerHectare: column(sprays, ({ gramsPerHectare }) => gramsPerHectare),
      line: lines(sprays),
    },
  }
}
