import type { OptionsOf, Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { type SelectedCounts, selectCounts } from '@thrum/survey'
import type { selectionOptions } from './options.ts'

export type SelectionOptions = OptionsOf<typeof selectionOptions>

const condition = (name: string, values: readonly string[] | undefined): readonly string[] =>
  values === undefined ? [] : [`${name}=${values.join('|')}`]

/**
 * Counts that the options select.
 *
 * @throws ThrumError questions/no-counts where the project has none, or none fulfils the conditions
 */
export function selectByOptions(snapshot: Snapshot, options: SelectionOptions): SelectedCounts {
  if (snapshot.tables.count.rows === 0) throw new ThrumError('questions/no-counts-yet')
  const selected = selectCounts(snapshot, {
    where: [
      ...condition('field', options.field),
      ...condition('crop', options.crop),
      ...condition('season', options.season),
      ...(options.where ?? []),
    ],
    except: options.except ?? [],
    unit: options.unit ?? null,
  })
  if (selected.rows.length === 0) throw new ThrumError('questions/no-counts-selected', { of: snapshot.tables.count.rows })
  return selected
}
