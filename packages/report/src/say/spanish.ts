import { modelWordsEs } from '@thrum/model'
import type { Words } from '@thrum/model/ground'
import { questionsWordsEs } from '@thrum/questions'
import { surveyWordsEs } from '@thrum/survey'
import { words as figureWordsEs } from '../figure/words.es.ts'
import { words as reportWordsEs } from '../words.es.ts'

/** Spanish of everything that answers say. Edges add the words of what they open and write. */
export const spanish: Words = { ...modelWordsEs, ...surveyWordsEs, ...questionsWordsEs, ...reportWordsEs, ...figureWordsEs }
