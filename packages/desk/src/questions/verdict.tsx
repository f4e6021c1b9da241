import type { Answer } from '@thrum/model'
import { useSay } from '../say/say.ts'

/** Each verdict has a shape of its own, so that nothing hangs on colour: drawn on a square of 20. */
const shapes: { readonly [verdict in NonNullable<Answer['verdict']>]: string } = {
  shown: 'M3 10L10 3L17 10L10 17Z',
  alike: 'M3 6H17V9H3ZM3 11H17V14H3Z',
  leaning: 'M3 17L17 17L17 3Z',
  unsettled: 'M10 3A7 7 0 1 1 9.99 3ZM10 6A4 4 0 1 0 10.01 6Z',
  'design-blocks': 'M3 3H17V17H3ZM6 9H14V11H6Z',
}

/** The verdict as a word with its shape, and what the word means. */
export function Verdict({ verdict }: { readonly verdict: Answer['verdict'] }) {
  const say = useSay()
  if (verdict === null) return null
  return (
    <p className={`verdict ${verdict}`}>
      <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
        <path d={shapes[verdict]} fill="currentColor" fillRule="evenodd" />
      </svg>
      <strong>{say(`verdict/${verdict}`)}</strong>
      <span>{say(`verdict/${verdict}/means`)}</span>
    </p>
  )
}
