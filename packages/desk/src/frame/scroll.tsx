import type { ReactNode } from 'react'

/** What may be wider than its place: scrolled by itself, by keys too. */
export function Scroll({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls has to be reached by keys
    <section className="scroll" aria-label={label} tabIndex={0}>
      {children}
    </section>
  )
}
