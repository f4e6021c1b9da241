/** Many may use a thing at once; whoever changes it is alone with it. */
export interface Turns {
  together<T>(use: () => Promise<T>): Promise<T>
  /** Waits until nobody uses it; whoever comes meanwhile waits behind. */
  alone<T>(change: () => Promise<T>): Promise<T>
}

export function createTurns(): Turns {
  let users = 0
  let change: Promise<unknown> | null = null
  let lastLeft: (() => void) | null = null
  return {
    together: async (use) => {
      while (change !== null) await change
      users += 1
      try {
        return await use()
      } finally {
        users -= 1
        if (users === 0) lastLeft?.()
      }
    },
    alone: async (act) => {
      while (change !== null) await change
      const whenEmpty =
        users === 0
          ? Promise.resolve()
          : new Promise<void>((resolve) => {
              lastLeft = resolve
            })
      const done = whenEmpty.then(act)
      change = done.catch(() => undefined)
      try {
        return await done
      } finally {
        change = null
        lastLeft = null
      }
    },
  }
}
