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
    level: say.saying({ id: 'report/figure/level', values: { level: 100 * level } }),
  })
}
