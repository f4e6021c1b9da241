import type { Theme } from '@thrum/report'
import { useSyncExternalStore } from 'react'

/** Light or dark: as the machine says, or as the person chose here; on paper light, whatever the screen is. */
const place = 'thrum-look'
const dark = matchMedia('(prefers-color-scheme: dark)')
const listeners = new Set<() => void>()

const chosen = (): Theme | null => {
  const kept = localStorage.getItem(place)
  return kept === 'light' || kept === 'dark' ? kept : null
}

/** From when the browser is about to print until it has. */
let isPrinting = false

export const look = (): Theme => (isPrinting ? 'light' : onScreen())

const onScreen = (): Theme => chosen() ?? (dark.matches ? 'dark' : 'light')

function show(): void {
  document.documentElement.dataset.look = look()
  for (const listener of listeners) listener()
}

export function choose(theme: Theme): void {
  localStorage.setItem(place, theme)
  show()
}

export function startLook(): void {
  dark.addEventListener('change', show)
  for (const [event, printing] of [
    ['beforeprint', true],
    ['afterprint', false],
  ] as const) {
    addEventListener(event, () => {
      isPrinting = printing
      show()
    })
  }
  show()
}

export function useLook(): Theme {
  return useSyncExternalStore((listener) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }, look)
}
