import { useNavigate, useSearch } from '@tanstack/react-router'
import { BeginPart } from '../begin/begin-part.tsx'
import { WalkPart } from '../begin/walk-part.tsx'
import { useProject } from '../door/project.ts'
import { Trouble } from '../frame/trouble.tsx'
import { useSay } from '../say/say.ts'
import { AnswerPart } from './answer-part.tsx'
import { isComplete, useAnswer, useEarlier } from './answering.ts'
import { AskedList } from './asked-list.tsx'
import { type AskingSearch, askingOf } from './asking.ts'
import { Sentence } from './sentence.tsx'
import { useLasting, Working } from './working.tsx'

/** What is still to be said before the question can be put. */
function Wanting({ asking }: { readonly asking: AskingSearch }) {
  const say = useSay()
  const { o = {} } = asking
  const hasContrast = o.between !== undefined || o.since !== undefined
  return <p className="wanting-note">{say(hasContrast ? 'wanting/worth' : 'wanting/contrast')}</p>
}

/** An answer that was stopped before it was there. */
function Stopped({ onAgain }: { readonly onAgain: () => void }) {
  const say = useSay()
  return (
    <p role="status">
      {say('stopped')}{' '}
      <button type="button" onClick={onAgain}>
        {say('again')}
      </button>
    </p>
  )
}

/** Before this long [ms] nobody needs to be told that something is worked out. */
const soon = 400

/** The question as a sentence, its answer below, and what was asked before beside them. */
export function QuestionsPage() {
  const say = useSay()
  const asking = useSearch({ from: '/' })
  const navigate = useNavigate({ from: '/' })
  const project = useProject()
  const put = askingOf(asking)
  const answer = useAnswer(put, project.data?.digest)
  const isLong = useLasting(answer.isFetching, soon)
  const hasNone = answer.data === undefined || answer.isPlaceholderData
  const isStopped = put !== null && isComplete(put) && hasNone && answer.fetchStatus === 'idle' && !answer.isError
  const earlier = useEarlier(answer.isPlaceholderData ? undefined : answer.data)
  if (project.isError) return <Trouble error={project.error} again={() => void project.refetch()} />
  if (project.data === undefined) return <Working />
  if (project.data.counts === 0) return <BeginPart project={project.data} />
  return (
    <div className="questions">
      <title>{`${say('page/questions')} – Thrum`}</title>
      <div className="main">
        <Sentence project={project.data} asking={asking} onChange={(search) => void navigate({ search })} />
        {put === null && project.data.demonstration ? <WalkPart /> : null}
        {put !== null && !isComplete(put) ? <Wanting asking={asking} /> : null}
        {answer.isError ? <Trouble error={answer.error} again={() => void answer.refetch()} /> : null}
        {answer.isFetching && (answer.data === undefined || isLong) ? <Working canStop={isLong} /> : null}
        {isStopped ? <Stopped onAgain={() => void answer.refetch()} /> : null}
        {put !== null && answer.data !== undefined && isComplete(put) && !answer.isError && !isStopped ? (
          <div aria-busy={answer.isPlaceholderData}>
            <AnswerPart answer={answer.data} asking={put} earlier={earlier} />
          </div>
        ) : null}
      </div>
      <AskedList />
    </div>
  )
}
