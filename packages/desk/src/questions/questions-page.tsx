import { useNavigate, useSearch } from '@tanstack/react-router'
import { BeginPart } from '../begin/begin-part.tsx'
import { WalkPart } from '../begin/walk-part.tsx'
import { useProject } from '../door/project.ts'
import { useConnection } from '../frame/connection.tsx'
import { Trouble } from '../frame/trouble.tsx'
import { useSay } from '../say/say.ts'
import { AnswerPart } from './answer-part.tsx'
import { isComplete, useAnswer, useEarlier } from './answering.ts'
import { AskedList } from './asked-list.tsx'
import { type AskingSearch, askingOf } from './asking.ts'
import { Sentence } from './sentence.tsx'

/** What is still to be said before the question can be put. */
function Wanting({ asking }: { readonly asking: AskingSearch }) {
  const say = useSay()
  const { o = {} } = asking
  const hasContrast = o.between !== undefined || o.since !== undefined
  return <p className="wanting-note">{say(hasContrast ? 'wanting/worth' : 'wanting/contrast')}</p>
}

function Working() {
  const say = useSay()
  const { progress } = useConnection()
  return (
    <div className="working" role="status">
      <p>{say('working')}</p>
      {progress === null ? null : <progress value={progress.done} max={progress.total} aria-label={say('working')} />}
    </div>
  )
}

/** The question as a sentence, its answer below, and what was asked before beside them. */
export function QuestionsPage() {
  const say = useSay()
  const asking = useSearch({ from: '/' })
  const navigate = useNavigate({ from: '/' })
  const project = useProject()
  const put = askingOf(asking)
  const answer = useAnswer(put, project.data?.digest)
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
        {answer.isFetching && answer.data === undefined ? <Working /> : null}
        {put !== null && answer.data !== undefined && isComplete(put) && !answer.isError ? (
          <div aria-busy={answer.isPlaceholderData}>
            <AnswerPart answer={answer.data} asking={put} earlier={earlier} />
          </div>
        ) : null}
      </div>
      <AskedList />
    </div>
  )
}
