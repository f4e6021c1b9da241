import type { Estimate } from '@thrum/model'
import type { Say } from '../say/speaker.tsx'

function numberWords(value: number, own: Estimate, say: Say): string {
  // The digits of the sentences: two of a share in per cent, three of anything else.
  const digits = own.scale === 'share' ? 2 : 3
  return new Intl.NumberFormat(say.language, {
    style: own.scale === 'share' ? 'percent' : 'decimal',
    minimumSignificantDigits: digits,
    maximumSignificantDigits: digits,
  }).format(value)
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
