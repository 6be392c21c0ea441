import { DecisionTreeClassifier } from 'ml-cart'
import { z } from 'zod'
import type { SoybeanCases } from '../external/soybean/cases.js'

interface TreeNode {
  readonly splitColumn?: number | undefined
  readonly splitValue?: number | undefined
  readonly left?: TreeNode | undefined
  readonly right?: TreeNode | undefined
}

const Node: z.ZodType<TreeNode> = z.lazy(() => z.object({
  splitColumn: z.number().optional(), splitValue: z.number().optional(), left: Node.optional(), right: Node.optional(),
}))

/** What one single-path tree says of a case: P(problem), and the checks it asked. */
export interface PathEnd {
  readonly shares: Float64Array
  readonly checks: number
}

/**
 * A CART tree of the ml-cart library (Gini, as it comes), one yes/no column an answer; a cell that was not recorded is no to all.
 * Walked as a single path: at *not sure* it stops with the problems of its training cases there, or follows both branches.
 */
export function cartTree(data: SoybeanCases, training: readonly number[]): (cells: Int8Array, atUnsure: 'stop' | 'both') => PathEnd {
  const columns = data.answerWords.flatMap((words, check) => words.map((_, answer) => ({ check, answer })))
  const encode = (cells: Int8Array): number[] => columns.map(({ check, answer }) => (cells[check] === answer ? 1 : 0))
  const tree = new DecisionTreeClassifier({ gainFunction: 'gini', minNumSamples: 3 })
  tree.train(training.map((row) => encode(data.cells[row] ?? new Int8Array())), training.map((row) => data.problems[row] ?? 0))
  const root = Node.parse(JSON.parse(JSON.stringify(tree.toJSON().root)))

  // Training cases at every node, for the shares at a leaf or where the path stops.
  const counts = new Map<TreeNode, Float64Array>()
  for (const row of training) {
    const coded = encode(data.cells[row] ?? new Int8Array())
    let node: TreeNode | undefined = root
    while (node !== undefined) {
      const tally: Float64Array = counts.get(node) ?? new Float64Array(data.problemNames.length)
      const problem = data.problems[row] ?? 0
      tally[problem] = (tally[problem] ?? 0) + 1
      counts.set(node, tally)
      node = node.splitColumn === undefined ? undefined : (coded[node.splitColumn] ?? 0) < (node.splitValue ?? 0) ? node.left : node.right
    }
  }
  const sharesAt = (node: TreeNode): Float64Array => {
    const tally = counts.get(node) ?? new Float64Array(data.problemNames.length)
    const total = tally.reduce((sum, count) => sum + count, 0)
    return tally.map((count) => (count + 0.01) / (total + 0.01 * tally.length))
  }
  return (cells, atUnsure) => {
    const asked = new Set<number>()
    const walk = (node: TreeNode): Float64Array => {
      const column = node.splitColumn === undefined ? undefined : columns[node.splitColumn]
      if (column === undefined || node.left === undefined || node.right === undefined) return sharesAt(node)
      asked.add(column.check)
      const cell = cells[column.check] ?? -1
      if (cell >= 0) return walk((cell === column.answer ? 1 : 0) < (node.splitValue ?? 0) ? node.left : node.right)
      if (atUnsure === 'stop') return sharesAt(node)
      const weights = [node.left, node.right].map((child) => (counts.get(child) ?? new Float64Array(1)).reduce((sum, count) => sum + count, 0))
      const [left, right] = [walk(node.left), walk(node.right)]
      const share = (weights[0] ?? 0) / Math.max(1, (weights[0] ?? 0) + (weights[1] ?? 0))
      return left.map((part, problem) => share * part + (1 - share) * (right[problem] ?? 0))
    }
    const shares = walk(root)
    return { shares, checks: asked.size }
  }
}
