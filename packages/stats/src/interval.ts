/** Two limits, lower <= upper. An infinite upper limit is meant: the data set no ceiling. */
export type Interval = { readonly lower: number; readonly upper: number }
