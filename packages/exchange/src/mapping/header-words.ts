import { foldedName } from '../cell/plain-name.ts'
import type { Role } from './roles.ts'

/** A header as words between blanks: `Time_Start` is ` time start `, `Temp °C` is ` temp c `. */
export function headerWords(header: string): string {
  const apart = header
    .replace(/([a-z])([A-Z])/gu, '$1 $2')
    .replace(/m²/gu, 'm2')
    .replace(/%/gu, ' percent ')
    .replace(/m\s*\/\s*s/giu, ' mps ')
    .replace(/km\s*\/\s*h/giu, ' kmh ')
    .replace(/\//gu, ' / ')
  return ` ${foldedName(apart)
    .replace(/[^\p{L}\p{N}/]+/gu, ' ')
    .trim()} `
}

/** Words of one meaning in English, German, Swedish, Danish, Spanish and French field sheets, without accents. */
const word = (alternatives: string): RegExp => new RegExp(` (?:${alternatives}) `, 'u')

const flower = 'open flowers?|flowers?|bluten|blumen|blommor|blomster|flores|fleurs'
const unit =
  'inflorescences?|inflorescencias?|heads?|racemes?|umbels?|units?|blutenstande?|blutenkopfe?|blomstallning(?:ar)?|blomsterstande?'
const distance = 'distance|dist|abstand|entfernung|avstand|afstand|distancia'

/** Headers and what they say their column is; the first that fits stands. */
export const roleWords: readonly (readonly [Role, RegExp])[] = [
  ['flowersPerUnit', new RegExp(` (?:${flower})(?: \\w+)* (?:per|pro|je|par|por|/) (?:\\w+ )*(?:${unit}) `, 'u')],
  ['flowers', new RegExp(` (?:${flower}) `, 'u')],
  ['flowerUnits', new RegExp(` (?:${unit.replace('|units?', '|floral units?')}) `, 'u')],
  [
    'hiveDistance',
    new RegExp(
      ` (?:hives?|bienenstocke?|bikup\\w*|bistade\\w*|kupor|colmenas?|ruches?)(?: \\w+)* (?:${distance}) | (?:${distance})(?: \\w+)* (?:hives?|bienenstocke?|bikup\\w*|bistade\\w*|kupor|colmenas?|ruches?) `,
      'u',
    ),
  ],
  ['hives', word('hives?|colonies|bienenvolker|volker|bikupor|bistader|kupor|colmenas?|ruches?|hives within (?:\\w+ )?\\w+')],
  [
    'edgeDistance',
    new RegExp(
      ` (?:edge|rand|kant|borde|bord|lisiere)(?: \\w+)* (?:${distance}) | (?:${distance})(?: \\w+)* (?:edge|rand|kant|borde|bord|lisiere) `,
      'u',
    ),
  ],
  [
    'key',
    / (?:(?:visit|record|sample|count|watch|row|survey|card) ?id|card no|lopnummer|lobenummer|lfd nr) |^ (?:id|key|uuid|record|nr|no) $/u,
  ],
  [
    'minutes',
    word(
      'minutes?|minuten|minuter|minutter|minutos|mins?|duration|dauer|varighet|varighed|duracion|duree|(?:observation|sampled|sampling|watch|watching) time|beobachtungszeit|beobachtungsdauer|observationstid|effort',
    ),
  ],
  ['pauses', word('pauses?|pausen|breaks?|interruptions?|pauser')],
  ['start', word('start|begin|beginn|anfang|borjan|begyndelse|starttid|inicio|comienzo|debut|von|from|hora inicio|heure debut')],
  ['end', word('end|ende|stop|slut|sluttid|stopptid|final|fin|bis|until')],
  ['date', word('date|datum|dato|fecha|tag der zahlung')],
  ['day', word('day|tag|dag|dia|jour')],
  ['month', word('month|monat|manad|maned|mes|mois')],
  ['year', word('year|jahr|ar|aar|ano|annee')],
  [
    'observer',
    word(
      'observers?|recorders?|counter|counted by|surveyor|beobachter(?:in)?|zahler|erfasser|observator|inventerare|raknare|observatorer|observador|observateur|who|crew',
    ),
  ],
  ['cultivar', word('cultivar|variety|sorte|sort|variedad|variete')],
  ['crop', word('crop|kultur|feldfrucht|kulturpflanze|groda|afgrode|cultivo|culture')],
  ['stage', word('bbch|(?:bloom|flowering|growth|crop) stage|stage|stadium|bluhstadium|blomningsstadium|stadie|estadio|stade')],
  ['temperature', word('temp|temperature|temperatur|temperatura|lufttemp\\w*|air temp')],
  ['wind', word('wind|wind speed|windstarke|vind|vindstyrke|vindstyrka|viento|vent|beaufort|bft')],
  [
    'cloud',
    word('clouds?|cloud cover|cloudiness|wolken|bewolkung|moln|molnighet|skydaekke|nubes|nubosidad|nuages|nebulosite|oktas?'),
  ],
  ['sun', word('sun|sunshine|sonne|sonnenschein|sol|solsken|solskin|soleil')],
  ['rain', word('rain|regen|regn|nederbord|nedbor|lluvia|pluie|precipitation')],
  ['area', word('area|flache|yta|areal|superficie|surface|(?:sampled|total sampled|plot|watched) area')],
  ['position', word('position|edge or cent(?:re|er)|in field|lage')],
  [
    'plot',
    word(
      'plots?|quadrats?|quadrants?|transects?|subplot|teilflache|parzelle|transekt|ruta|provyta|delfelt|cuadrante|transecto|transecte|placette',
    ),
  ],
  ['visit', word('visit|round|walk|survey|besuch|runde|durchgang|begehung|besok|omgang|runda|besog|visita|ronda|visite|passage')],
  [
    'field',
    word(
      'fields?|sites?|site id|farms?|orchards?|feld|schlag|betrieb|hof|standort|falt|gard|lokal|plats|gaard|sted|mark|campo|parcela|finca|sitio|champ|parcelle|ferme|locality',
    ),
  ],
  ['season', word('season|saison|sasong|saeson|temporada')],
  ['unit', word('counting unit|zahleinheit')],
  ['start', word('time|zeit|uhrzeit|tid|klockan|klokkeslaet|hora|heure')],
  ['method', word('method|methode|metod|metode|metodo|protocol|(?:sampling|survey) method')],
  ['caste', word('caste|sex|kaste|geschlecht|kon|casta|sexo|sexe')],
  ['behaviour', word('behaviou?r|verhalten|beteende|adfaerd|comportamiento|comportement')],
  [
    'note',
    word(
      'notes?|remarks?|comments?|bemerkung(?:en)?|anmerkung(?:en)?|anmarkning(?:ar)?|kommentar(?:er)?|bemaerkning(?:er)?|observaciones?|notas?|remarques?|commentaires?|description',
    ),
  ],
]

/** Headers of a long table's columns of who and how many; those that say insect before those that say species. */
export const kindWords: readonly RegExp[] = [
  word(
    '(?:insect|pollinator|visitor|bee|flower visitor) (?:species|kind|group|taxon|type)|pollinators?|visitors?|insects?|bestauber|blutenbesucher|pollinerare|bestover|polinizador|pollinisateur|visiteur',
  ),
  word('species|taxon|kind|insekt|art|artnamn|especie|espece|taxa'),
  word('guild|group|gruppe|grupp|grupo|groupe|morphospecies'),
]
export const numberWords: RegExp =
  /^ (?:counts?|number|n|no|visits|anzahl|antal|antall|numero|cantidad|nombre|total count) $| (?:(?:number|no) of (?:individuals|insects|visits|bees)|abundance|individuals|individuen|abundancia|effectif|abondance|anzahl (?:tiere|individuen)|antal (?:individer|insekter)) /u
/** Columns that count visitors of all kinds together. */
export const visitsWords: RegExp = /^ (?:(?:bee|insect|flower|pollinator) )?visits? $| (?:visit|visitation) (?:count|number) /u
export const plantWords: RegExp = word('plants?|plant species|pflanze|vaxt|plante|planta|flower species')
export const sumWords: RegExp = word(
  'totals?|all|all bees|all insects|sum|gesamt|summe|summa|i alt|totalt|suma|somme|toutes?|todos',
)
export const presenceWords: RegExp = word('present|presence|absent|seen|yes no|vorhanden|forekomst|presente|presence absence')
