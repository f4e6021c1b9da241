import type { TextColumn } from '@thrum/model'
import { declarationOf } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { foldedName, plainName } from '../cell/plain-name.ts'
import { durationUnits, isMeasureRole, isSingleRole, type Role, unitMustBeSaid } from '../mapping/roles.ts'
import type { MappedColumn, Mapping } from '../mapping/shape.ts'
import { conversionTo } from '../mapping/units.ts'
import type { Sheet } from '../read/sheet.ts'

const longRoles: ReadonlySet<Role> = new Set(['kind', 'number', 'caste', 'behaviour'])
const wideRoles: ReadonlySet<Role> = new Set(['tally'])

/** A column of the sheet with what the mapping says it is. */
export interface SheetColumn {
  readonly mapped: MappedColumn
  readonly header: string
  readonly cells: TextColumn
}

export interface MappedColumns {
  readonly all: readonly SheetColumn[]
  /** The only column of a role, or undefined. */
  one(role: Role): SheetColumn | undefined
  every(role: Role): readonly SheetColumn[]
  /** Headers that the mapping does not name. */
  readonly unmapped: readonly string[]
}

function placeOf(sheet: Sheet, header: string): number {
  const plain = plainName(header)
  const exact = sheet.headers.indexOf(plain)
  return exact >= 0 ? exact : sheet.headers.findIndex((known) => foldedName(known) === foldedName(plain))
}

function checkUnit({ mapped, header }: SheetColumn): void {
  const { as, unit } = mapped
  if (isMeasureRole(as)) {
    if (unit === undefined && unitMustBeSaid.has(as)) throw new ThrumError('exchange/mapping/unit-missing', { header, as })
    if (conversionTo(as, unit) === null) throw new ThrumError('exchange/mapping/unit-unknown', { header, as, unit: unit ?? '' })
  }
  const duration = as === 'minutes' || as === 'pauses'
  if (duration && unit !== undefined && !(durationUnits as readonly string[]).includes(unit)) {
    throw new ThrumError('exchange/mapping/unit-unknown', { header, as, unit })
  }
}

/**
 * Finds the mapping's columns in the sheet.
 *
 * @throws ThrumError exchange/mapping/column-missing, column-twice, role-twice, role-of-other-shape,
 * unit-missing, unit-unknown, factor-name-taken
 */
export function mappedColumns(sheet: Sheet, mapping: Mapping): MappedColumns {
  const places = new Set<number>()
  const all = mapping.columns.map((mapped): SheetColumn => {
    const place = placeOf(sheet, mapped.header)
    const cells = sheet.columns[place]
    const header = sheet.headers[place]
    if (cells === undefined || header === undefined) {
      throw new ThrumError('exchange/mapping/column-missing', { header: mapped.header, headers: sheet.headers.join(', ') })
    }
    if (places.has(place)) throw new ThrumError('exchange/mapping/column-twice', { header })
    places.add(place)
    return { mapped, header, cells }
  })
  const byRole = Map.groupBy(all, ({ mapped }) => mapped.as)
  for (const [role, columns] of byRole) {
    if (columns.length > 1 && isSingleRole(role)) {
      throw new ThrumError('exchange/mapping/role-twice', { role, headers: columns.map(({ header }) => header).join(', ') })
    }
  }
  for (const column of all) {
    checkUnit(column)
    const { as } = column.mapped
    const other = mapping.shape === 'wide' ? longRoles : wideRoles
    if (other.has(as))
      throw new ThrumError('exchange/mapping/role-of-other-shape', { role: as, header: column.header, shape: mapping.shape })
    const factor = column.mapped.factor ?? column.header
    if (column.mapped.as === 'factor' && declarationOf('count', factor) !== undefined) {
      throw new ThrumError('exchange/mapping/factor-name-taken', { factor })
    }
  }
  return {
    all,
    one: (role) => byRole.get(role)?.[0],
    every: (role) => byRole.get(role) ?? [],
    unmapped: sheet.headers.filter((_, place) => !places.has(place)),
  }
}
