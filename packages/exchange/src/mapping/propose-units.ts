import { headerWords } from './header-words.ts'
import type { ProposedColumn } from './propose-roles.ts'

/** A unit for a column, and whether its header said it: if not, a person is asked. */
export interface ProposedUnit {
  readonly unit: string | null
  readonly said: boolean
}

const said = (unit: string): ProposedUnit => ({ unit, said: true })
const asked = (unit: string): ProposedUnit => ({ unit, said: false })

const lengthUnit = (words: string): ProposedUnit => {
  if (/ km /u.test(words)) return said('km')
  if (/ (?:ft|feet) /u.test(words)) return said('ft')
  if (/ (?:yd|yards?) /u.test(words)) return said('yd')
  return / (?:m|metres?|meters?|meter|metros|metres) /u.test(words) ? said('m') : asked('m')
}

/** The unit of a measured column by its header; where the header is silent, a likely one by the size of its values. */
export function proposeUnit({ header, as, look }: ProposedColumn): ProposedUnit | null {
  const words = headerWords(header)
  if (as === 'flowers') return / (?:per|pro|je|par|por|\/) (?:m2|sqm|qm|square metre) /u.test(words) ? said('{flowers}/m2') : null
  if (as === 'temperature') {
    if (/ (?:c|celsius|cel) /u.test(words)) return said('Cel')
    if (/ (?:f|fahrenheit) /u.test(words)) return said('degF')
    return asked(look.least > 45 ? 'degF' : 'Cel')
  }
  if (as === 'area') {
    if (/ (?:m2|sqm|qm|square met(?:re|er)s?|kvadratmeter) /u.test(words)) return said('m2')
    if (/ (?:ha|hectares?|hektar) /u.test(words)) return said('ha')
    if (/ acres? /u.test(words)) return said('acre')
    return / (?:ft2|sq ft) /u.test(words) ? said('ft2') : asked('m2')
  }
  if (as === 'wind') {
    if (/ (?:beaufort|bft) /u.test(words)) return said('{Beaufort}')
    if (/ mps /u.test(words)) return said('m/s')
    if (/ kmh /u.test(words)) return said('km/h')
    if (/ mph /u.test(words)) return said('mph')
    return asked(look.whole && look.largest <= 12 ? '{Beaufort}' : 'm/s')
  }
  if (as === 'cloud') {
    if (/ oktas? /u.test(words)) return said('{okta}')
    if (/ percent /u.test(words)) return said('%')
    return asked(look.largest > 10 ? '%' : '{okta}')
  }
  return as === 'hiveDistance' || as === 'edgeDistance' ? lengthUnit(words) : null
}
