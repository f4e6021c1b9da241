import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { canonicalJson, sha256Hex } from '@thrum/model/ground'
import { type CalibrationCell, keyOf } from './calibration-cells.ts'
import { type CellFound, runCell } from './calibration-run.ts'

/** What the trial has done so far. */
export interface CalibrationState {
  readonly version: 1
  /** Tells one procedure and set of cells from the next, so that results of two are never mixed. */
  readonly of: string
  readonly seed: string
  /** By key of the cell. */
  readonly cells: ReadonlyMap<string, CellFound>
}

const probed = 12
const probeSets = 200

/** Hash of the cells, and of what the procedure says to a few hundred sets of some of them. */
export function stateKey(cells: readonly CalibrationCell[]): string {
  const step = Math.max(1, Math.floor(cells.length / probed))
  const probe = cells.filter((_, k) => k % step === 0).map((cell) => runCell(cell, probeSets, 'probe'))
  return sha256Hex(canonicalJson([cells.map(keyOf), probe])).slice(0, 16)
}

/** The state a file holds, or an empty one where there is none or it is of another procedure, other cells or another seed. */
export function readState(path: string, of: string, seed: string): CalibrationState {
  if (existsSync(path)) {
    const kept = JSON.parse(readFileSync(path, 'utf8')) as Omit<CalibrationState, 'cells'> & {
      readonly cells: [string, CellFound][]
    }
    if (kept.version === 1 && kept.of === of && kept.seed === seed) return { ...kept, cells: new Map(kept.cells) }
  }
  return { version: 1, of, seed, cells: new Map() }
}

/** Writes beside and renames, a cell a line. */
export function writeState(path: string, { version, of, seed, cells }: CalibrationState): void {
  mkdirSync(dirname(path), { recursive: true })
  const lines = [...cells].map((entry) => `  ${JSON.stringify(entry)}`)
  const head = `"version": ${version},\n "of": ${JSON.stringify(of)},\n "seed": ${JSON.stringify(seed)}`
  writeFileSync(`${path}.part`, `{\n ${head},\n "cells": [\n${lines.join(',\n')}\n ]\n}\n`)
  renameSync(`${path}.part`, path)
}
