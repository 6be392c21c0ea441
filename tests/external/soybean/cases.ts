/**
 * The soybean disease cases: "Soybean (Large)", UCI Machine Learning Repository, donated 1988 by M. Tan and J. Schlimmer;
 * first described in R. S. Michalski and R. L. Chilausky, International Journal of Policy Analysis and Information
 * Systems 4(2), 1980. CC BY 4.0, as the repository states for its data sets (doi 10.24432/C5JG6Z). Changed from ARFF to CSV; no value changed.
 * An outside benchmark, not content of the product.
 */
import { readFileSync } from 'node:fs'

export interface SoybeanCases {
  readonly checkNames: readonly string[]
  /** Words of each check's answers, as the source lists them. */
  readonly answerWords: readonly (readonly string[])[]
  readonly problemNames: readonly string[]
  /** Problem of each case. */
  readonly problems: Int32Array
  /** Answers of each case, -1 where not recorded; one row a case. */
  readonly cells: readonly Int8Array[]
}

const listed: readonly (readonly [string, string])[] = [
  ['date', 'april may june july august september october'], ['plant-stand', 'normal lt-normal'],
  ['precip', 'lt-norm norm gt-norm'], ['temp', 'lt-norm norm gt-norm'], ['hail', 'yes no'],
  ['crop-hist', 'diff-lst-year same-lst-yr same-lst-two-yrs same-lst-sev-yrs'],
  ['area-damaged', 'scattered low-areas upper-areas whole-field'], ['severity', 'minor pot-severe severe'],
  ['seed-tmt', 'none fungicide other'], ['germination', '90-100 80-89 lt-80'], ['plant-growth', 'norm abnorm'],
  ['leaves', 'norm abnorm'], ['leafspots-halo', 'absent yellow-halos no-yellow-halos'],
  ['leafspots-marg', 'w-s-marg no-w-s-marg dna'], ['leafspot-size', 'lt-1/8 gt-1/8 dna'],
  ['leaf-shread', 'absent present'], ['leaf-malf', 'absent present'], ['leaf-mild', 'absent upper-surf lower-surf'],
  ['stem', 'norm abnorm'], ['lodging', 'yes no'], ['stem-cankers', 'absent below-soil above-soil above-sec-nde'],
  ['canker-lesion', 'dna brown dk-brown-blk tan'], ['fruiting-bodies', 'absent present'],
  ['external-decay', 'absent firm-and-dry watery'], ['mycelium', 'absent present'], ['int-discolor', 'none brown black'],
  ['sclerotia', 'absent present'], ['fruit-pods', 'norm diseased few-present dna'],
  ['fruit-spots', 'absent colored brown-w/blk-specks distort dna'], ['seed', 'norm abnorm'],
  ['mold-growth', 'absent present'], ['seed-discolor', 'absent present'], ['seed-size', 'norm lt-norm'],
  ['shriveling', 'absent present'], ['roots', 'norm rotted galls-cysts'],
]

const problemNames = ('diaporthe-stem-canker charcoal-rot rhizoctonia-root-rot phytophthora-rot brown-stem-rot powdery-mildew '
  + 'downy-mildew brown-spot bacterial-blight bacterial-pustule purple-seed-stain anthracnose phyllosticta-leaf-spot '
  + 'alternarialeaf-spot frog-eye-leaf-spot diaporthe-pod-&-stem-blight cyst-nematode 2-4-d-injury herbicide-injury').split(' ')

/**
 * Reads the table.
 * @throws when a row holds a word that the source does not list
 */
export function readSoybeans(path = new URL('soybean.csv', import.meta.url)): SoybeanCases {
  const lines = readFileSync(path, 'utf8').trim().split('\n').slice(1)
  const answerWords = listed.map(([, words]) => words.split(' '))
  const cells = lines.map((line, row) => {
    const words = line.split(',')
    return Int8Array.from(answerWords, (known, check) => {
      const word = words[check] ?? ''
      const place = known.indexOf(word)
      if (place < 0 && word !== '?') throw new Error(`Row ${row} has "${word}" for ${listed[check]?.[0] ?? '?'}, which the source does not list.`)
      return place
    })
  })
  const problems = Int32Array.from(lines, (line) => problemNames.indexOf(line.slice(line.lastIndexOf(',') + 1)))
  return { checkNames: listed.map(([name]) => name), answerWords, problemNames, problems, cells }
}

/** The fixed generator of the split: state × 1664525 + 1013904223 modulo 2^32; gives state / 2^32. */
export function linearDraws(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(1664525, state) + 1013904223) >>> 0
    return state / 4294967296
  }
}

/** Ten parts of nearly equal size with each problem spread evenly: the part of each case. */
export function splitInTen({ problems }: SoybeanCases, seed: number): Int32Array {
  const draw = linearDraws(seed)
  const order = Array.from(problems, (_, row) => row)
  for (let place = order.length - 1; place >= 1; place--) {
    const other = Math.floor(draw() * (place + 1))
    const kept = order[place] ?? 0
    order[place] = order[other] ?? 0
    order[other] = kept
  }
  const parts = new Int32Array(order.length)
  let turn = 0
  for (let problem = 0; problem < problemNames.length; problem++) {
    for (const row of order) {
      if (problems[row] !== problem) continue
      parts[row] = turn % 10
      turn += 1
    }
  }
  return parts
}

/** The cells with a share `wrong` of the answers replaced by another and then a share `unsure` lost. */
export function spoil({ cells, answerWords }: SoybeanCases, seed: number, unsure: number, wrong: number): Int8Array[] {
  const draw = linearDraws(seed)
  const spoilt = cells.map((row) => Int8Array.from(row, (cell, check) => {
    const chance = draw()
    if (cell < 0 || chance >= wrong) return cell
    const other = Math.floor(draw() * ((answerWords[check]?.length ?? 0) - 1))
    return other >= cell ? other + 1 : other
  }))
  for (const row of spoilt) row.forEach((_, check) => { if (draw() < unsure) row[check] = -1 })
  return spoilt
}
