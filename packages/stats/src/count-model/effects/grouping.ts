/** A factor whose levels have intercepts drawn at random: for each row the place of its level. */
export interface Grouping {
  readonly name: string
  /** Length n, each from 0 to `levels` - 1. */
  readonly of: Int32Array
  readonly levels: number
  /** A covariate whose coefficient is drawn at random too, one for each level. */
  readonly slope?: RandomSlope
}

export interface RandomSlope {
  readonly name: string
  /** Length n, finite. */
  readonly values: ArrayLike<number>
  /** False where slopes and intercepts of a level are drawn apart; true unless said. */
  readonly isCorrelated?: boolean
}
