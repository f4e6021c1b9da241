/** Languages in which everything can be said, as BCP 47 names them. */
export const languages = ['en', 'es'] as const
export type Language = (typeof languages)[number]

/** The first of the languages a person reads (`es-PE`, `en`) that is spoken here; English where none is. */
export function spokenLanguage(wanted: readonly string[]): Language {
  for (const own of wanted) {
    const found = languages.find((language) => own.toLowerCase().split(/[-_.@]/u, 1)[0] === language)
    if (found !== undefined) return found
  }
  return 'en'
}

/** How a language writes days: of English the order of day, month, year. */
export const dayLocale = (language: string): string => (language === 'en' ? 'en-GB' : language)
