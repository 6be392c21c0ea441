/** `npm run bench -- NAME [--json]`: speed and quality, as ratios within one run. Never part of `npm test`. */
import { engineBench } from './engine-bench.js'
import { httpBench } from './http-bench.js'
import { keysBench } from './keys-bench.js'
import { matchBench } from './match-bench.js'
import { seasonCountsBench } from './season-counts-bench.js'
import { soybeanBench } from './soybean-bench.js'
import { weatherBench } from './weather-bench.js'

const [name, ...flags] = process.argv.slice(2)
/** `--minutes N`: for how long the memory of the service is looked at. */
const minutes = flags.includes('--minutes') ? Number(flags[flags.indexOf('--minutes') + 1]) : 1

const benches: Readonly<Record<string, (json: boolean) => void | Promise<void>>> = { engine: engineBench, http: (json) => httpBench(json, minutes), keys: keysBench, match: matchBench, season: weatherBench, 'season-counts': seasonCountsBench, soybean: soybeanBench }

const bench = name === undefined ? undefined : benches[name]
if (bench === undefined) {
  process.stderr.write(`Name a bench: ${Object.keys(benches).join(', ')}. For example: npm run bench -- engine --json\n`)
  process.exitCode = 1
} else await bench(flags.includes('--json'))
