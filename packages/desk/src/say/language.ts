import { type Language, languages, spokenLanguage } from '@thrum/report'
import { useSyncExternalStore } from 'react'

/** The language of the page: as the browser says, or as the person chose here. */
const place = 'thrum-language'
const listeners = new Set<() => void>()

export function language(): Language {
  const kept = localStorage.getItem(place)
  return languages.find((own) => own === kept) ?? spokenLanguage(navigator.languages)
}

export function chooseLanguage(own: Language): void {
  localStorage.setItem(place, own)
  for (const listener of listeners) listener()
}

export function useLanguage(): Language {
  return useSyncExternalStore((listener) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }, language)
}
