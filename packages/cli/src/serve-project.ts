import { saying } from '@thrum/model/ground'
import { wrap } from '@thrum/report'
import { buildDesk } from './build-desk.ts'
import type { Terminal } from './terminal/terminal.ts'

/**
 * Serves the desk until the person ends it, and says its address on a line of its own. A project that is served already is not
 * served twice: its address is said.
 *
 * @param project null: none is open, and the desk offers to make one
 * @param port null: the usual one
 * @throws ThrumError store/..., server/no-port
 */
export async function serve(project: string | null, port: number | null, terminal: Terminal): Promise<void> {
  const { say, print } = terminal
  const tell = (id: string, values = {}): void => {
    for (const line of wrap(say(saying(id, values)))) print(line)
  }
  // Loaded when it is needed: no other command waits for it.
  const { servingNow, startServer, usualPort } = await import('@thrum/server')
  const already = project === null ? null : await servingNow(project)
  if (already !== null) {
    tell('cli/serve/already')
    print(already.address)
    terminal.json({ project, address: already.address, port: already.port, state: 'already' })
    return
  }
  await buildDesk()
  const wished = port ?? usualPort
  const server = await startServer({ folder: process.cwd(), project, port: wished })
  try {
    if (wished !== 0 && server.port !== wished)
      tell('cli/serve/other-port', { wished: String(wished), port: String(server.port) })
    tell('cli/serve/address')
    print(server.address)
    tell('cli/serve/end')
    terminal.json({ project, address: server.address, port: server.port, state: 'serving' })
    await terminal.untilStopped()
  } finally {
    await server.close()
  }
  tell('cli/serve/ended')
}
