import type { Guise, Ink } from './ink.ts'
import { hint } from './letters.ts'
import { element, numberText, type SvgNode } from './svg.ts'

const outlines: { readonly [shape in Exclude<Guise['shape'], 'disc'>]: (r: number) => string } = {
  diamond: (r) =>
    `l${numberText(r * 1.2)} ${numberText(r * 1.2)}l${numberText(-r * 1.2)} ${numberText(r * 1.2)}l${numberText(-r * 1.2)} ${numberText(-r * 1.2)}z`,
  triangle: (r) => `l${numberText(r * 1.2)} ${numberText(r * 2.1)}h${numberText(-r * 2.4)}z`,
  square: (r) => `h${numberText(r * 1.8)}v${numberText(r * 1.8)}h${numberText(-r * 1.8)}z`,
}
const starts: { readonly [shape in Exclude<Guise['shape'], 'disc'>]: (x: number, y: number, r: number) => string } = {
  diamond: (x, y, r) => `M${numberText(x)} ${numberText(y - r * 1.2)}`,
  triangle: (x, y, r) => `M${numberText(x)} ${numberText(y - r * 1.25)}`,
  square: (x, y, r) => `M${numberText(x - r * 0.9)} ${numberText(y - r * 0.9)}`,
}

/** A mark of a level about a point, with what it stands for as a hint beside the pointer. */
export function drawMark(x: number, y: number, r: number, guise: Guise, ink: Ink, told?: string): SvgNode {
  const colour = ink[guise.colour]
  const look = {
    fill: guise.isFilled ? colour : ink.paper,
    stroke: guise.isFilled ? ink.paper : colour,
    'stroke-width': guise.isFilled ? 1 : 1.6,
  }
  const hints = told === undefined ? [] : [element('title', {}, hint(told))]
  return guise.shape === 'disc'
    ? element('circle', { cx: x, cy: y, r, ...look }, ...hints)
    : element(
        'path',
        { d: `${starts[guise.shape](x, y, r)}${outlines[guise.shape](r)}`, 'stroke-linejoin': 'round', ...look },
        ...hints,
      )
}
