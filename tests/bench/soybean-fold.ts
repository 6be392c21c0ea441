import { Belief, type DescribedCases, type Learnt, learnModel, type MisreadRate } from '../../src/engine/index.js'
import { linearDraws, type SoybeanCases, spoil } from '../external/soybean/cases.js'
import { AskedTree } from './asked-tree.js'
import { cartTree } from './cart-tree.js'
import { chooseEnding, type Plays } from './soybean-choice.js'
import { type Ending, FOCUS, playSoybean, SURE_ENOUGH } from './soybean-play.js'

const INNER_PARTS = 10
/** The training cases are dealt to inner parts this many times: by one deal the choice is largely luck. */
const DEALS = 5
/** Whoever answers misreads next to nothing, one answer in twenty or one in seven, and which is not known; settled on splits 26 to 33, see the README. */
const MISREAD: readonly MisreadRate[] = [{ rate: 0.01, share: 0.5 }, { rate: 0.05, share: 0.3 }, { rate: 0.15, share: 0.2 }]
/** The same in the mean, for naive Bayes beside it. */
const MEAN_MISREAD = 0.05
const NOT_LISTED = 0.01

/** All that is learnt and chosen from nine parts, and the cases of the tenth. */
export interface Fold {
  readonly tree: AskedTree
  readonly ending: Ending
  /** The profiles alone, for naive Bayes. */
  readonly plain: Learnt
  readonly plainBelief: Belief
  readonly plainTree: AskedTree
  readonly cart: ReturnType<typeof cartTree>
  readonly tested: readonly number[]
}

export function makeFold(data: SoybeanCases, parts: Int32Array, part: number): Fold {
  const rows = Array.from(parts, (_, row) => row)
  const training = rows.filter((row) => parts[row] !== part)
  const ending = choose(data, training, part)
  const plain = plainOf(learnModel(described(data, training), { looseness: 1, profileCases: 1, smoothing: 0.5, misread: MEAN_MISREAD, notListed: NOT_LISTED }))
  const plainBelief = new Belief(plain.model)
  return {
    tree: treeOf(learn(data, training)), ending, plain, plainBelief, plainTree: new AskedTree(plain, plainBelief),
    cart: cartTree(data, training), tested: rows.filter((row) => parts[row] === part),
  }
}

/**
 * Chooses the ending by playing the training cases against models learnt without them, over several deals (repeated
 * cross-validation: Krstajic, Buturovic, Leahy, Thomas 2014, Journal of Cheminformatics 6:10, from memory).
 */
function choose(data: SoybeanCases, training: readonly number[], part: number): Ending {
  const plays: { [kind in keyof Plays]: Plays[kind][number][] } = { clean: [], flipped: [] }
  for (let deal = 0; deal < DEALS; deal++) {
    const inner = dealInner(data, training, 10 * deal + part)
    // People misread about one answer in twenty: what is chosen has to serve clean answers and such ones.
    const spoilt = [20_000, 30_000].map((seed) => spoil(data, seed + 10 * deal + part, 0, 0.05))
    for (let held = 0; held < INNER_PARTS; held++) {
      const tree = treeOf(learn(data, training.filter((row) => inner.get(row) !== held)))
      for (const row of training.filter((one) => inner.get(one) === held)) {
        const truth = data.problems[row] ?? 0
        plays.clean.push(playSoybean(tree, data.cells[row] ?? new Int8Array(), truth, SURE_ENOUGH))
        for (const cells of spoilt) plays.flipped.push(playSoybean(tree, cells[row] ?? new Int8Array(), truth, SURE_ENOUGH))
      }
    }
  }
  return chooseEnding(plays)
}

/** Deals the training cases, shuffled and problem by problem, so that each inner part has its share of every problem. */
function dealInner({ problems }: SoybeanCases, training: readonly number[], deal: number): Map<number, number> {
  const draw = linearDraws(10_000 + deal)
  const shuffled = training.map((row) => ({ row, draw: draw() })).sort((a, b) => (problems[a.row] ?? 0) - (problems[b.row] ?? 0) || a.draw - b.draw)
  return new Map(shuffled.map(({ row }, turn) => [row, turn % INNER_PARTS]))
}

function learn(data: SoybeanCases, rows: readonly number[]): Learnt {
  return learnModel(described(data, rows), { looseness: 'fit', profileCases: 1, smoothing: 'fit', misread: MISREAD, notListed: NOT_LISTED })
}

function treeOf(learnt: Learnt): AskedTree {
  return new AskedTree(learnt, new Belief(learnt.model, FOCUS))
}

function described(data: SoybeanCases, rows: readonly number[]): DescribedCases {
  return {
    answers: data.answerWords.map((words) => words.length), problems: data.problemNames.length,
    cases: rows.map((row) => ({ problem: data.problems[row] ?? 0, answers: data.cells[row] ?? new Int8Array() })),
  }
}

/** The same with the profiles alone: one row a problem. */
function plainOf(learnt: Learnt): Learnt {
  const { model, profiles } = learnt
  const problems = model.problems
  return {
    ...learnt,
    model: {
      problems, rows: problems, problemOfRow: Int32Array.from({ length: problems }, (_, row) => row), logRowShare: new Float64Array(problems), groups: 0,
      checks: model.checks.map((check, place) => {
        const log = profiles[place] ?? new Float64Array()
        const share = log.map(Math.exp)
        const orderliness = Float64Array.from({ length: problems }, (_, row) => {
          let sum = 0
          for (let answer = 0; answer < check.answers; answer++) sum += (share[row * check.answers + answer] ?? 0) * (log[row * check.answers + answer] ?? 0)
          return sum
        })
        return { ...check, log, share, orderliness }
      }),
    },
  }
}
