import { type ReactNode, useEffect, useId, useRef, useState } from 'react'

/**
 * A blank in a sentence: it reads as a part of it, and opens a small sheet in which it is filled. Closed by Escape, by a click
 * beside it, or by leaving it.
 */
export function Blank({
  label,
  value,
  isOpen: startsOpen = false,
  isWanting = false,
  children,
}: {
  readonly label: string
  readonly value: string
  readonly isOpen?: boolean
  /** Not filled yet, and needed. */
  readonly isWanting?: boolean
  readonly children: (close: () => void) => ReactNode
}) {
  const [isOpen, setOpen] = useState(startsOpen)
  const id = useId()
  const whole = useRef<HTMLSpanElement>(null)
  const button = useRef<HTMLButtonElement>(null)
  const close = (): void => {
    setOpen(false)
    button.current?.focus()
  }
  useEffect(() => {
    if (!isOpen) return
    const isOutside = (target: EventTarget | null): target is Node =>
      target instanceof Node && whole.current?.contains(target) !== true
    const pressed = ({ target }: Event): void => {
      if (isOutside(target)) setOpen(false)
    }
    // A press on the words of a choice gives the focus to whatever around it can have it: that is not leaving.
    const left = ({ target }: Event): void => {
      if (isOutside(target) && !target.contains(whole.current)) setOpen(false)
    }
    document.addEventListener('pointerdown', pressed)
    document.addEventListener('focusin', left)
    whole.current?.querySelector<HTMLElement>('.sheet input:checked, .sheet input, .sheet button')?.focus()
    return () => {
      document.removeEventListener('pointerdown', pressed)
      document.removeEventListener('focusin', left)
    }
  }, [isOpen])
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Escape closes the sheet from wherever the focus is in it
    <span
      className="blank"
      ref={whole}
      onKeyDown={(event) => {
        if (event.key === 'Escape' && isOpen) {
          event.stopPropagation()
          close()
        }
      }}
    >
      <button
        type="button"
        ref={button}
        className={isWanting ? 'filled wanting' : 'filled'}
        aria-expanded={isOpen}
        aria-controls={isOpen ? id : undefined}
        aria-label={`${label}: ${value}`}
        onClick={() => setOpen(!isOpen)}
      >
        {value}
      </button>
      {isOpen ? (
        // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot stand inside a sentence
        <span className="sheet" id={id} role="group" aria-label={label}>
          {children(close)}
        </span>
      ) : null}
    </span>
  )
}
