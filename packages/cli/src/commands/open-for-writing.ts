import { openProject, type Project } from '@thrum/host'
import type { Terminal } from '../terminal/terminal.ts'

/** Opens a project that a command will write to; what went wrong beside it (no backup today) is told on the way. */
export function openForWriting(path: string, terminal: Pick<Terminal, 'say' | 'note'>): Promise<Project> {
  return openProject(path, 'write', { onNote: (note) => terminal.note(terminal.say(note)) })
}
