import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { Answer } from '@thrum/model'
import { get } from '../door/request.ts'
import type { Asking } from '../door/shapes.ts'
import { readAsking } from '../questions/asking.ts'
import { Verdict } from '../questions/verdict.tsx'
import { useSay } from '../say/say.ts'

interface Stop extends Asking {
  readonly verdict: NonNullable<Answer['verdict']>
}

/** A short walk through the demonstration: one question for each of four verdicts, and why it comes out so. */
export function WalkPart() {
  const say = useSay()
  const { data: stops = [] } = useQuery({ queryKey: ['walk'], queryFn: () => get<readonly Stop[]>('walk') })
  return (
    <section className="walk" aria-labelledby="walk">
      <h1 id="walk">{say('walk')}</h1>
      <p>{say('walk/how')}</p>
      <ol>
        {stops.map((stop) => (
          <li key={stop.verdict}>
            <Verdict verdict={stop.verdict} />
            <h2>
              <Link to="/" search={readAsking({ q: stop.question, o: stop.options })}>
                {say(`walk/${stop.verdict}`)}
              </Link>
            </h2>
            <p>{say(`walk/${stop.verdict}/why`)}</p>
          </li>
        ))}
      </ol>
    </section>
  )
}
