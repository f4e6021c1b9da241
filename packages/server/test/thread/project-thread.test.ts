import { describe, expect, it, onTestFinished } from 'vitest'
import { type ProjectThread, startProjectThread } from '../../src/thread/project-thread.ts'
import { testFolder } from '../serving.ts'

async function start(project: string | null = 'first'): Promise<ProjectThread> {
  const thread = await startProjectThread({ folder: testFolder(), project }, new URL('./dying-worker.ts', import.meta.url))
  onTestFinished(() => thread.close())
  return thread
}

describe('the thread of the project', () => {
  it('that dies fails what it had in hand, and is started anew on the project that was open last', async () => {
    const thread = await start()
    expect((await thread.call('project', null)).body).toBe('first')
    await thread.call('open', 'second')
    const inHand = thread.call('ask', { question: 'a', options: {} })
    const dying = thread.call('check', null)
    for (const call of [inHand, dying]) await expect(call).rejects.toMatchObject({ code: 'server/thread-ended' })
    expect((await thread.call('project', null)).body).toBe('second')
    expect(thread.opened?.path).toBe('second')
  })

  it('stops what it is told to stop, and takes nothing that was stopped before', async () => {
    const thread = await start()
    const stop = new AbortController()
    const asked = thread.call('ask', { question: 'a', options: {} }, { signal: stop.signal })
    stop.abort()
    await expect(asked).rejects.toMatchObject({ code: 'server/cancelled' })
    await expect(thread.call('project', null, { signal: stop.signal })).rejects.toMatchObject({ code: 'server/cancelled' })
  })

  it('answers nothing after it was closed; closing twice is closing once', async () => {
    const thread = await start(null)
    await thread.close()
    await thread.close()
    await expect(thread.call('project', null)).rejects.toMatchObject({ code: 'server/cancelled' })
  })

  it('that cannot open its project says why', async () => {
    const folder = testFolder()
    await expect(startProjectThread({ folder, project: `${folder}/never.thrum` })).rejects.toMatchObject({
      code: 'store/no-such-file',
    })
  })
})
