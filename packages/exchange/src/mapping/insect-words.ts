import { headerWords } from './header-words.ts'

/** A group of visitors that headers name, and the plain name it is given where a header says no more than that. */
interface InsectGroup {
  readonly kind: string
  /** The header names the group and nothing finer. */
  readonly names: RegExp
  /** The header names something that belongs to it. */
  readonly within: RegExp
}

const whole = (alternatives: string): RegExp => new RegExp(`^ (?:${alternatives}) $`, 'u')
const part = (alternatives: string): RegExp => new RegExp(` (?:${alternatives}) `, 'u')
const group = (kind: string, names: string, within = names): InsectGroup => ({
  kind,
  names: whole(names),
  within: part(`${names}|${within}`),
})

/** Visitors in English, German, Swedish, Danish, Spanish, French and Latin, without accents. */
const groups: readonly InsectGroup[] = [
  group(
    'honey bee',
    'honey ?bees?|honigbienen?|honungsbin?|honningbier?|abejas? meliferas?|abejas? de miel|abeilles? domestiques?|abeilles? melliferes?|apis|apis mellifera|a mellifera|honey|hb',
  ),
  group(
    'bumble bee',
    'bumble ?bees?|bombus|hummeln?|humlor|humla|humlebier?|abejorros?|bourdons?|bumble|bb',
    'bombus|b (?:terrestris|lapidarius|lucorum|pascuorum|hortorum|pratorum|hypnorum|muscorum|ruderatus|sylvarum|impatiens)',
  ),
  group(
    'solitary bee',
    'solitary|solitary bees?|solitarbienen?|solitarbin?|enlige bier|abejas? solitarias?|abeilles? solitaires?',
  ),
  group(
    'wild bee',
    'wild ?bees?|wild|wildbienen?|vildbin?|vilde bier|abejas? silvestres?|abeilles? sauvages?|other (?:wild )?bees?|andere bienen|ovriga bin|andre bier',
    'osmia|andrena|halict\\w*|lasioglossum|megachile|xylocopa|colletes|mason bees?|mining bees?|leafcutter bees?|sweat bees?|bees?|bienen?|abejas?|abeilles?',
  ),
  group(
    'hover fly',
    'hover ?fl(?:y|ies)|syrphid\\w*|syrhip\\w*|schwebfliegen?|blomflug\\w*|svirreflue\\w*|sirfidos?|syrphes?',
    'eristalis|episyrphus',
  ),
  group('fly', 'fl(?:y|ies)|fliegen?|flugor|fluer|moscas?|mouches?', '\\w*dipter\\w*|other flies|bee ?fl(?:y|ies)'),
  group(
    'butterfly',
    'butterfl(?:y|ies)|schmetterlinge?|falter|fjarilar|sommerfugle|mariposas?|papillons?',
    'moths?|lepidopter\\w*|pieris',
  ),
  group('beetle', 'beetles?|kafer|skalbaggar|biller|escarabajos?|coleopteres?', 'coleopter\\w*|pollen beetles?'),
  group('wasp', 'wasps?|wespen?|getingar|hvepse|avispas?|guepes?', 'hymenopter\\w*|symphyta|sawfl(?:y|ies)'),
  group('ant', 'ants?|ameisen?|myror|myrer|hormigas?|fourmis?'),
  group('other insect', 'others?|other insects?|other visitors?|sonstige|andere|ovriga|andre|otros|autres'),
]

/** Endings of families and subfamilies of animals (International Code of Zoological Nomenclature, article 29.2). */
const familyName = / \w+(?:idae|inae) /u

export interface InsectHeader {
  /** The plain name of the group, where the header says no more than that. */
  readonly kind: string | null
  readonly group: string | null
  /** False for two words that only look like a Latin name: other meanings of the header come first. */
  readonly sure: boolean
}

/** What a header says of visitors; null where it names none. */
export function insectHeader(header: string): InsectHeader | null {
  const words = headerWords(header)
  // Under a group name (`Bumble bees / long tongue`) the last part alone may say nothing.
  const parts = words.split(' / ').map((words) => ` ${words.trim()} `)
  const last = parts.at(-1) ?? ''
  const named = groups.find(({ names }) => names.test(words)) ?? groups.find(({ names }) => names.test(last))
  if (named !== undefined) return { kind: named.kind, group: named.kind, sure: true }
  const within = groups.find(({ within }) => parts.some((part) => within.test(part)))
  if (within !== undefined) return { kind: null, group: within.kind, sure: true }
  // A second word with a Latin ending: "Plant height" and "Time watched" are none.
  const binomial = /^[A-Z][a-z]{2,}[ _.](?:[a-z]+(?:us|a|um|is|i|ae|or|ax|ens|ans|ops|rix|ex)|sp\.?|spp\.?)$/u.test(header.trim())
  if (familyName.test(words)) return { kind: null, group: null, sure: true }
  return binomial ? { kind: null, group: null, sure: false } : null
}
