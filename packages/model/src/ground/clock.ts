/** What the platform knows of time. Passed in, so that tests own it. */
export interface Clock {
  /** Milliseconds since 1 January 1970 UTC, by the wall clock. */
  now(): number
  /** Milliseconds that only ever grow. */
  monotonic(): number
  /** IANA name of the local time zone, e.g. `Europe/London`. */
  zone(): string
}
