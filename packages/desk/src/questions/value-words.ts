import type { Estimate } from '@thrum/model'
import { limitWords, valueWords } from '@thrum/report'
import type { Say } from '../say/say.ts'

export function estimateWords({ value, scale }: Estimate, say: Say): string {
  return value === null ? say('estimates/no-limit') : valueWords(value, scale, say.language)
}

export function intervalWords({ interval, scale }: Estimate, say: Say): string {
  const { low, high, level } = interval
  if (low === null && high === null) return ''
  const words = limitWords(low, high, scale, say.language)
  return say('estimates/from-to', {
    low: words.low ?? say('estimates/no-limit'),
    high: words.high ?? say('estimates/no-limit'),
    level: new Intl.NumberFormat(say.language, { style: 'percent', maximumFractionDigits: 2 }).format(level),
  })
}
