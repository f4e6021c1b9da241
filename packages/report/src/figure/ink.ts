/** On paper, or on a dark screen. */
export const themes = ['light', 'dark'] as const
export type Theme = (typeof themes)[number]

/**
 * Colours of a figure. Text has a contrast of at least 4.5 : 1 against the paper and the band, marks of at least 3 : 1
 * (WCAG 2.2, success criteria 1.4.3 and 1.4.11); the tests compute them.
 */
export interface Ink {
  readonly paper: string
  /** Headings and numbers. */
  readonly text: string
  /** Axes, captions, what stands beside. */
  readonly quiet: string
  /** Thin lines that part rows; never the only carrier of a meaning. */
  readonly hair: string
  /** What was asked. */
  readonly slate: string
  readonly madder: string
  readonly verdigris: string
  readonly plum: string
  /** Ratios too small to act on, and the stretch that a strip covers. */
  readonly band: string
}

export const inks: { readonly [theme in Theme]: Ink } = {
  light: {
    paper: '#ffffff',
    text: '#1b2127',
    quiet: '#56606a',
    hair: '#d3d8dc',
    slate: '#34495e',
    madder: '#a5323f',
    verdigris: '#1f746a',
    plum: '#6c4a86',
    band: '#e2eeeb',
  },
  dark: {
    paper: '#15191d',
    text: '#eceae4',
    quiet: '#a9b1b8',
    hair: '#39414a',
    slate: '#a7bdd2',
    madder: '#ec9296',
    verdigris: '#74c6b6',
    plum: '#c5a5dc',
    band: '#20322f',
  },
}

/** What a level looks like: in grey print the shape and its filling tell it, on a screen the colour too. */
export interface Guise {
  readonly shape: 'disc' | 'diamond' | 'triangle' | 'square'
  readonly isFilled: boolean
  readonly colour: 'slate' | 'madder' | 'verdigris' | 'plum'
}

/** The reference, which comes first, is open; what is compared with it is filled. */
export const guises: readonly Guise[] = [
  { shape: 'disc', isFilled: false, colour: 'slate' },
  { shape: 'diamond', isFilled: true, colour: 'madder' },
  { shape: 'triangle', isFilled: false, colour: 'verdigris' },
  { shape: 'square', isFilled: true, colour: 'plum' },
]

/** One level alone, or more levels than there are guises: their place tells them. */
const soleGuise: Guise = { shape: 'disc', isFilled: true, colour: 'slate' }

export function guiseOf(level: number, levels: number): Guise {
  return (levels > 1 && levels <= guises.length ? guises[level] : undefined) ?? soleGuise
}
