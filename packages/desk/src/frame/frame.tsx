import { Link, Outlet } from '@tanstack/react-router'
import { useProject } from '../door/project.ts'
import { useSay } from '../say/say.ts'
import { useConnection } from './connection.tsx'
import { useDroppedFiles } from './dropped-files.ts'
import { LanguageSwitch } from './language-switch.tsx'
import { choose, useLook } from './look.ts'

const pages = [
  { to: '/', name: 'questions' },
  { to: '/counts', name: 'counts' },
  { to: '/tables', name: 'tables' },
] as const

function LookSwitch() {
  const say = useSay()
  const other = useLook() === 'dark' ? 'light' : 'dark'
  return (
    <button type="button" className="quiet" onClick={() => choose(other)}>
      {say(`look/${other}`)}
    </button>
  )
}

function Standing() {
  const say = useSay()
  const { isGone, isRefused, cameBack, dismiss } = useConnection()
  const { data: project } = useProject()
  return (
    <div aria-live="polite">
      {isGone ? <p className="standing bad">{say('gone')}</p> : null}
      {isRefused ? <p className="standing bad">{say('locked')}</p> : null}
      {!isGone && cameBack ? (
        <p className="standing">
          {say('back')}{' '}
          <button type="button" className="link" onClick={dismiss}>
            {say('dismiss')}
          </button>
        </p>
      ) : null}
      {project?.mode === 'read' ? (
        <p className="standing">{say('read-only', { because: project.because === null ? '' : say.saying(project.because) })}</p>
      ) : null}
    </div>
  )
}

/** What every page stands in: the title line, the pages, and what is to be known of the project at any moment. */
export function Frame() {
  const say = useSay()
  const { data: project } = useProject()
  useDroppedFiles()
  return (
    <>
      <a className="skip" href="#page">
        {say('skip')}
      </a>
      <header className="masthead">
        <p className="mark">Thrum</p>
        <nav aria-label={say('pages')}>
          {pages.map(({ to, name }) => (
            <Link
              key={to}
              to={to}
              activeOptions={{ exact: to === '/', includeSearch: false }}
              activeProps={{ 'aria-current': 'page' }}
            >
              {say(`page/${name}`)}
            </Link>
          ))}
        </nav>
        <p className="whose">
          {project === undefined
            ? ''
            : say('whose', { title: project.title, counts: project.counts, digest: project.digest.slice(0, 8) })}
        </p>
        <p className="switches">
          <LanguageSwitch />
          <LookSwitch />
        </p>
      </header>
      <Standing />
      <main id="page" tabIndex={-1}>
        <Outlet />
      </main>
    </>
  )
}
