declare const unit: unique symbol

/** A number that carries its unit in its type, for quantities that meet across packages. */
export type Quantity<U extends string> = number & { readonly [unit]: U }

export type Minutes = Quantity<'min'>
export type Metres = Quantity<'m'>
export type SquareMetres = Quantity<'m2'>
/** Days since 1 January 1970, in the local calendar of the field. */
export type DayNumber = Quantity<'d'>
/** Minutes since local midnight. */
export type ClockMinutes = Quantity<'min-of-day'>
