import type { Answer } from '@thrum/model'
import type { Saying } from '@thrum/model/ground'
import type { Asking } from '../door/shapes.ts'
import { useSay } from '../say/say.ts'
import { Cautions } from './cautions.tsx'
import { Drawing } from './drawing.tsx'
import { EstimatesPart } from './estimates-part.tsx'
import { MethodPart } from './method-part.tsx'
import { TakeAway } from './take-away.tsx'
import { Verdict } from './verdict.tsx'

function Sentences({
  heading,
  sayings,
  name,
}: {
  readonly heading: string
  readonly sayings: readonly Saying[]
  readonly name: string
}) {
  const say = useSay()
  if (sayings.length === 0) return null
  return (
    <section className={name} aria-labelledby={name}>
      <h2 id={name}>{heading}</h2>
      <ul>
        {sayings.map((own) => (
          <li key={say.saying(own)}>{say.saying(own)}</li>
        ))}
      </ul>
    </section>
  )
}

/** The answer that stood here before, so that what a changed blank did can be seen. */
function Earlier({ answer }: { readonly answer: Answer }) {
  const say = useSay()
  return (
    <aside className="earlier" aria-labelledby="earlier">
      <h2 id="earlier">{say('heading/earlier')}</h2>
      <p className="asked">{say.saying(answer.asked)}</p>
      <p>{say.saying(answer.headline)}</p>
      {answer.verdict === null ? null : <p className="note">{say(`verdict/${answer.verdict}`)}</p>}
    </aside>
  )
}

/** An answer: the sentence, the figure, what may be said and what may not, what to beware of, how it was made, what next. */
export function AnswerPart({
  answer,
  asking,
  earlier,
}: {
  readonly answer: Answer
  readonly asking: Asking
  readonly earlier: Answer | null
}) {
  const say = useSay()
  return (
    <article className="answer" aria-labelledby="headline">
      <p className="asked">{say.saying(answer.asked)}</p>
      <h1 id="headline">{say.saying(answer.headline)}</h1>
      <Verdict verdict={answer.verdict} />
      {earlier === null ? null : <Earlier answer={earlier} />}
      <div className="figures">
        {answer.figures.map((figure) => (
          <Drawing key={`${figure.kind} ${say.saying(figure.title)}`} figure={figure} />
        ))}
      </div>
      <div className="claims">
        <Sentences name="can-say" heading={say('heading/can-say')} sayings={answer.claims.canSay} />
        <Sentences name="cannot-say" heading={say('heading/cannot-say')} sayings={answer.claims.cannotSay} />
      </div>
      <Cautions answer={answer} />
      <Sentences name="next" heading={say('heading/next')} sayings={answer.next} />
      <EstimatesPart estimates={answer.estimates} />
      <MethodPart answer={answer} />
      <TakeAway asking={asking} />
    </article>
  )
}
