// Makes a fresh clone ready: installs what the lock file names and builds what is older than its sources.
// Plain JavaScript with nothing but Node's own modules, since it runs before anything is installed.
import { execFileSync, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = join(dirname(fileURLToPath(import.meta.url)), '../../..')

const LEAST_NODE = [20, 19]

/** Stops with a plain sentence when Node is too old to run any of this. */
export function ensureNode() {
  const [major, minor] = process.versions.node.split('.').map(Number)
  if (major > LEAST_NODE[0] || (major === LEAST_NODE[0] && minor >= LEAST_NODE[1])) return
  fail(`Frondline needs Node ${LEAST_NODE.join('.')} or later; this is ${process.versions.node}. Install a newer Node and try again.`)
}

/** Installs the packages of package-lock.json unless that very lock file is already installed. */
export function ensureInstalled() {
  const lock = join(root, 'package-lock.json')
  const stamp = join(root, 'node_modules/.frondline-lock')
  if (!existsSync(lock)) return
  const wanted = createHash('sha256').update(readFileSync(lock)).digest('hex')
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return
  say('Installing packages (once; building the SQLite driver takes about a minute) …')
  const npm = spawnSync('npm', ['ci', '--include=dev', '--no-audit', '--no-fund'], { cwd: root, stdio: ['ignore', 2, 2] })
  if (npm.status !== 0) fail('npm ci did not succeed; its own words stand above. Frondline needs the npm registry once, and a C++ compiler for better-sqlite3.')
  writeFileSync(stamp, wanted)
}

/** Builds the service (dist/frondline.js) when it is older than its sources. */
export async function ensureServiceBuilt() {
  const out = join(root, 'dist/frondline.js')
  if (isFresh(out, ['src', 'shared'], (path) => /\.(ts|tsx|mjs|sql)$/.test(path) && !path.includes('/web/panel/'))) return
  const { build } = await import('esbuild')
  mkdirSync(join(root, 'dist'), { recursive: true })
  const { outputFiles } = await build({
    write: false,
    entryPoints: [join(root, 'src/cli/main.ts')], outfile: out, bundle: true, packages: 'external', platform: 'node',
    format: 'esm', target: 'node20', sourcemap: true, logLevel: 'warning', jsx: 'automatic', jsxImportSource: 'preact',
  })
  // Written whole and then renamed, so that a command started at the same time never reads half a program.
  for (const { path, contents } of outputFiles) {
    const whole = `${path}.${process.pid}`
    writeFileSync(whole, contents)
    renameSync(whole, path)
  }
}

/** Builds the screens (dist/web) when they are older than their sources. */
export function ensureScreensBuilt() {
  const stamp = join(root, 'dist/web/.built')
  if (isFresh(stamp, ['src/web', 'shared'], () => true)) return
  say('Building the screens …')
  execFileSync(process.execPath, ['--import', 'tsx', join(root, 'src/web/build-web.ts')], { cwd: root, stdio: ['ignore', 2, 2] })
  mkdirSync(dirname(stamp), { recursive: true })
  writeFileSync(stamp, '')
}

function isFresh(target, folders, counts) {
  if (!existsSync(target)) return false
  const built = statSync(target).mtimeMs
  return folders.every((folder) => filesBelow(join(root, folder)).every((path) => !counts(path) || statSync(path).mtimeMs <= built))
}

function filesBelow(folder) {
  if (!existsSync(folder)) return []
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name))
}

// Notices go to standard error, so that the output of a command can be piped.
export function say(sentence) {
  process.stderr.write(`${sentence}\n`)
}

export function fail(sentence) {
  say(sentence)
  process.exit(1)
}
