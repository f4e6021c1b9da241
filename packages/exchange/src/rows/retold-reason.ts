import { type Saying, saying } from '@thrum/model/ground'

/** Reasons whose numbers and lines stand in the sentence of the import only; a project keeps which reason it was. */
const retold: { readonly [because: string]: string } = {
  'exchange/row/cell-too-long': 'exchange/row/cell-too-long/retold',
  'exchange/row/too-many-cells': 'exchange/row/too-many-cells/retold',
  'exchange/row/too-few-cells': 'exchange/row/too-few-cells/retold',
  'exchange/row/entered-twice': 'exchange/row/entered-twice/retold',
  'exchange/row/entered-twice-asked': 'exchange/row/entered-twice-asked/retold',
  'exchange/row/in-conflict': 'exchange/row/in-conflict/retold',
}

/** Why a cell or a row was set aside, as it can be told again from what a project keeps. */
export function retoldReason(
  because: string,
  kept: { readonly line: number; readonly column: string; readonly written: string; readonly proposed: string },
): Saying {
  const own = retold[because]
  return own === undefined ? saying(because, kept) : saying(own)
}
