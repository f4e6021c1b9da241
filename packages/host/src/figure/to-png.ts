import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

export interface PngSettings {
  /** Pixels of the picture for each pixel of the drawing; 2 prints well in a column of text. */
  readonly scale: number
}

/** Width of the largest picture [px]. */
const widest = 16_000

/** The faces that are shipped with `report`: every machine draws the same letters, whatever it has installed. */
function fontFiles(): readonly string[] {
  const fonts = join(dirname(createRequire(import.meta.url).resolve('@thrum/report')), '..', 'fonts')
  return ['thrum-sans-regular.ttf', 'thrum-sans-semibold.ttf', 'thrum-serif-semibold.ttf'].map((name) => join(fonts, name))
}

/**
 * A drawing as a PNG picture. The renderer is loaded when it is first needed, so that commands without a picture do not wait
 * for it.
 *
 * @param svg a drawing of `report`
 * @throws RangeError where the scale is not above 0
 */
export async function toPng(svg: string, { scale }: PngSettings): Promise<Uint8Array> {
  if (!(scale > 0 && Number.isFinite(scale))) throw new RangeError(`scale should be above 0, but is ${scale}`)
  const { Resvg } = await import('@resvg/resvg-js')
  const font = {
    fontFiles: [...fontFiles()],
    loadSystemFonts: false,
    defaultFontFamily: 'Thrum Sans',
    sansSerifFamily: 'Thrum Sans',
    serifFamily: 'Thrum Serif',
  }
  const drawing = new Resvg(svg, { font })
  const width = Math.min(widest, Math.max(1, Math.round(drawing.width * scale)))
  return new Resvg(svg, { font, fitTo: { mode: 'width', value: width } }).render().asPng()
}
