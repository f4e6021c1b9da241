import { contrastOptions, verdictOptions } from '../contrast/options.ts'

export const isDesignSoundOptions = { ...contrastOptions, worth: verdictOptions.worth } as const
