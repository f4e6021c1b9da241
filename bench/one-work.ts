// One work in a process of its own: node bench/one-work.ts NAME GIVEN.json   Prints its times and its peak of memory as JSON.
import { readFileSync } from 'node:fs'
import { type WorkGiven, type WorkName, works } from './works.ts'

const [name, file] = process.argv.slice(2) as [WorkName, string]
const given = JSON.parse(readFileSync(file, 'utf8')) as WorkGiven
const seconds = await works[name](given)
// Of the whole process, the program itself among it [KiB to MiB].
const peak = process.resourceUsage().maxRSS / 1024
process.stdout.write(`${JSON.stringify({ seconds, peak })}\n`)
