import { basename } from 'node:path'
import type { CellDifference } from '@thrum/exchange'
import { type MendedOffer, shown } from '@thrum/host'
import { type Saying, saying } from '@thrum/model/ground'

/** Cells told one by one; of more, the number is said. The machine form has all of them. */
const mostCells = 20
/** Lines or kinds named in one sentence. */
const mostNamed = 12

const named = (names: readonly (string | number)[]): string =>
  names.length <= mostNamed ? names.join(', ') : `${names.slice(0, mostNamed).join(', ')} …`

const differenceOf = (cell: CellDifference) => {
  const where = { column: cell.column, table: cell.label === null ? ('count' as const) : ('tally' as const) }
  return {
    line: cell.line,
    column: cell.label ?? cell.column,
    of: cell.of,
    from: shown(where, cell.from),
    to: shown(where, cell.to),
  }
}

interface Told {
  readonly saying: Saying
  readonly isItem: boolean
}

const sentence = (id: string, values: Saying['values'] = {}): Told => ({ saying: saying(id, values), isItem: false })

function cells(id: string, list: readonly CellDifference[]): readonly Told[] {
  if (list.length === 0) return []
  const items = list.slice(0, mostCells).map((cell): Told => {
    const { of: _, ...values } = differenceOf(cell)
    return { saying: saying('cli/mended/cell', values), isItem: true }
  })
  const more = list.length - items.length
  return [
    sentence(id, { cells: list.length }),
    ...items,
    ...(more > 0 ? [{ saying: saying('cli/mended/more', { more }), isItem: true }] : []),
  ]
}

const kindsOf = (tallies: readonly { readonly label: string }[]): string =>
  named([...Map.groupBy(tallies, ({ label }) => label)].map(([label, of]) => `${label} (${of.length})`))

/** What a person reads before accepting a mended file: how it was matched, what changed, what is new and what is gone. */
export function mendedSayings(path: string, { offered, mends, plan, corrected }: MendedOffer): readonly Told[] {
  const { gone, goneTallies, added, addedTallies, withdrawnLines, forgottenLines, columnsGone, changed, kept } = plan
  const line = offered.read.tables.count.find(({ name }) => name === 'line')?.column
  const lines = added.flatMap((row) => (line?.type === 'number' ? [line.values[row] ?? 0] : []))
  const nothing = changed.length + kept.length + added.length + addedTallies.length + gone.length + goneTallies.length === 0
  return [
    sentence('cli/mended/of', {
      file: basename(path),
      mends: mends.file,
      day: mends.at.slice(0, 10),
      key: plan.key.join(', '),
    }),
    sentence('cli/mended/equal', { rows: plan.equal }),
    ...cells('cli/mended/changed', changed),
    ...cells('cli/mended/kept', kept),
    ...(added.length === 0
      ? []
      : [sentence('cli/mended/added', { rows: added.length, lines: lines.length, numbers: named(lines) })]),
    ...(addedTallies.length === 0
      ? []
      : [sentence('cli/mended/added-tallies', { tallies: addedTallies.length, kinds: kindsOf(addedTallies) })]),
    ...(gone.length === 0
      ? []
      : [
          sentence('cli/mended/gone', {
            rows: gone.length,
            names: named(gone.map(({ address }) => corrected.nameOf(address))),
          }),
        ]),
    ...(goneTallies.length === 0
      ? []
      : [sentence('cli/mended/gone-tallies', { tallies: goneTallies.length, kinds: kindsOf(goneTallies) })]),
    ...(withdrawnLines.length === 0
      ? []
      : [sentence('cli/mended/withdrawn', { rows: withdrawnLines.length, numbers: named(withdrawnLines) })]),
    ...(forgottenLines.length === 0
      ? []
      : [sentence('cli/mended/forgotten', { rows: forgottenLines.length, numbers: named(forgottenLines) })]),
    ...offered.read.notes
      .filter(({ id }) => id === 'exchange/note/columns-left-out')
      .map((own) => ({ saying: own, isItem: false })),
    ...(columnsGone.length === 0 ? [] : [sentence('cli/mended/columns-gone', { columns: columnsGone.join(', ') })]),
    ...(nothing ? [sentence('cli/mended/nothing')] : []),
  ]
}

/** The same for the machine form, with every cell. */
export function mendedResult({ mends, plan, corrected }: MendedOffer): unknown {
  return {
    mends: mends.sheet,
    key: plan.key,
    declared: plan.declared,
    equal: plan.equal,
    changed: plan.changed.map(differenceOf),
    kept: plan.kept.map(differenceOf),
    added: plan.added.length,
    addedTallies: plan.addedTallies,
    gone: plan.gone.map(({ address }) => ({ address, row: corrected.nameOf(address) })),
    goneTallies: plan.goneTallies,
    withdrawnLines: plan.withdrawnLines,
    forgottenLines: plan.forgottenLines,
    columnsGone: plan.columnsGone,
  }
}
