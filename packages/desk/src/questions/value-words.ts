import type { Estimate } from '@thrum/model'
import type { Say } from '../say/speaker.tsx'

const isShare = ({ unit }: Estimate): boolean => unit.id.startsWith('questions/unit/share')

function numberWords(value: number, own: Estimate, say: Say): string {
  const format = isShare(own)
    ? new Intl.NumberFormat(say.language, { style: 'percent', maximumSignificantDigits: 2 })
    : new Intl.NumberFormat(say.language, { maximumSignificantDigits: 3 })
  return format.format(value)
}

export function valueWords(own: Estimate, say: Say): string {
  return own.value === null ? say('estimates/no-limit') : numberWords(own.value, own, say)
}

export function intervalWords(own: Estimate, say: Say): string {
  const { low, high, level } = own.interval
  if (low === null && high === null) return ''
  return say('estimates/from-to', {
    low: low === null ? say('estimates/no-limit') : numberWords(low, own, say),
    high: high === null ? say('estimates/no-limit') : numberWords(high, own, say),
    level: new Intl.NumberFormat(say.language, { style: 'percent', maximumFractionDigits: 2 }).format(level),
  })
}
