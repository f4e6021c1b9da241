import { modelWords } from '@thrum/model'
import type { Words } from '@thrum/model/ground'
import { questionsWords } from '@thrum/questions'
import { surveyWords } from '@thrum/survey'
import { words as figureWords } from '../figure/words.en.ts'
import { words as reportWords } from '../words.en.ts'

/** English of everything that answers say. Edges add the words of what they open and write. */
export const english: Words = { ...modelWords, ...surveyWords, ...questionsWords, ...reportWords, ...figureWords }
