import { type Language, languages } from '@thrum/report'
import { chooseLanguage, useLanguage } from '../say/language.ts'

/** Each language by its own name: whoever looks for it may read no other. */
const names: { readonly [language in Language]: string } = { en: 'English', es: 'Español' }

export function LanguageSwitch() {
  const here = useLanguage()
  return languages
    .filter((own) => own !== here)
    .map((own) => (
      <button type="button" className="quiet" key={own} lang={own} onClick={() => chooseLanguage(own)}>
        {names[own]}
      </button>
    ))
}
