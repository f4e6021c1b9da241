import { isoDate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import type { CheckSubject, ShownLabel } from '@thrum/stats'

const label = (id: string, values: Saying['values'] = {}): Saying => saying(`questions/model-checks/label/${id}`, values)

/** What a line of a check is of, in words; dates for days since 1 January 1970. */
export function lineLabel(check: CheckSubject, own: ShownLabel): Saying {
  switch (own.kind) {
    case 'range': {
      if (check.kind === 'time') {
        const [from, to] = [isoDate(Math.round(own.low)), isoDate(Math.round(own.high))]
        return from === to ? label('date', { date: from }) : label('dates', { from, to })
      }
      const name = check.kind === 'covariate' ? check.name : ''
      return own.low === own.high
        ? label('value', { name, value: own.low })
        : label('range', { name, low: own.low, high: own.high })
    }
    case 'level':
      return label('level', { name: check.kind === 'covariate' ? check.name : '', level: own.level })
    case 'quantiles':
      return label('quantiles', { low: own.low, high: own.high })
    case 'means':
      return label('means', { low: own.low, high: own.high })
    case 'all-rows':
      return label('all-rows')
    case 'apart':
      return label('apart', { visits: own.visits })
    case 'beyond':
      return label(`beyond/${own.side}`)
  }
}
