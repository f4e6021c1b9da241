/** The one thing of the platform this package uses: the decoder of texts that browsers and Node share. */
declare class TextDecoder {
  constructor(label?: string, options?: { readonly fatal?: boolean; readonly ignoreBOM?: boolean })
  decode(input?: Uint8Array): string
}

/** As much of the parser as this package calls; its own typings need a DOM. */
declare module 'papaparse' {
  const Papa: {
    parse(
      text: string,
      options: { readonly delimiter: string; readonly newline: '\n'; readonly quoteChar: string },
    ): { readonly data: readonly (readonly string[])[] }
  }
  export = Papa
}
