import { harmOf } from './harmless.ts'

const elements = new Set([
  'svg',
  'title',
  'desc',
  'g',
  'rect',
  'path',
  'line',
  'circle',
  'ellipse',
  'polygon',
  'polyline',
  'text',
  'tspan',
])
const name = '[A-Za-z][A-Za-z0-9-]*'
const entity = /&(?!(?:amp|lt|gt|quot|apos|#39);)/u
/** Characters that XML 1.0 allows in no document (production 2). */
// biome-ignore lint/suspicious/noControlCharactersInRegex: characters that may not stand are what is looked for
const forbidden = /[^\u0009\u000a\u000d\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u

function attributesWrong(text: string): string | null {
  const seen = new Set<string>()
  let rest = text
  while (rest.trim() !== '') {
    const found = new RegExp(`^\\s+(${name})="([^"<]*)"`, 'u').exec(rest)
    if (found === null) return `attributes cannot be read: ${rest.slice(0, 80)}`
    const [whole, key = '', value = ''] = found
    if (seen.has(key)) return `attribute ${key} twice`
    seen.add(key)
    if (/^on/iu.test(key) || key === 'href' || key === 'style') return `attribute ${key}`
    if (/url\(|javascript:|data:/iu.test(value)) return `${key}="${value}" reaches elsewhere`
    if (entity.test(value)) return `a bare & in ${key}`
    rest = rest.slice(whole.length)
  }
  return null
}

/**
 * What is wrong with a drawing; null for one that is well-formed XML of shapes and text alone. Stricter than XML: no
 * comments, instructions or declarations, no references, no elements but those that draw.
 */
export function wrongInSvg(svg: string): string | null {
  const harm = harmOf(svg, 'the drawing')
  if (harm !== null) return harm
  const bad = forbidden.exec(svg)
  if (bad !== null) return `the drawing holds a character that XML forbids at ${bad.index}`
  const open: string[] = []
  let at = 0
  let roots = 0
  const tag = new RegExp(`<(/?)(${name})((?:\\s+${name}="[^"<]*")*)\\s*(/?)>`, 'uy')
  while (at < svg.length) {
    const next = svg.indexOf('<', at)
    const text = svg.slice(at, next < 0 ? svg.length : next)
    if (entity.test(text)) return `a bare & in text: ${text.slice(0, 80)}`
    if (text.includes(']]>')) return 'text holds ]]>'
    if (open.length === 0 && text.trim() !== '') return 'text outside the drawing'
    if (next < 0) break
    tag.lastIndex = next
    const found = tag.exec(svg)
    if (found === null) return `no tag at ${next}: ${svg.slice(next, next + 80)}`
    const [whole, closing, element = '', attributes = '', empty] = found
    if (!elements.has(element)) return `an element ${element}`
    if (closing === '/') {
      if (open.pop() !== element) return `${element} closes what it did not open`
    } else {
      const wrong = attributesWrong(attributes)
      if (wrong !== null) return wrong
      if (open.length === 0) roots++
      if (empty !== '/') open.push(element)
    }
    at = next + whole.length
  }
  return open.length > 0 ? `${open.at(-1)} is never closed` : roots === 1 ? null : `${roots} roots`
}
