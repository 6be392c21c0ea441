import { Argument, Command } from 'commander'
import { drawTree, reportHost, seededRandom } from '../../engine/index.js'
import { closestNames, suggest } from '../../guide/index.js'
import { DEFAULT_TREES, requireGuide } from '../guide-option.js'
import { notice, print } from '../terminal.js'
import { treeAsYaml } from '../tree-yaml.js'

/** `frondline suggest`: the tree that the profiles alone would draw for a host. */
export function suggestCommand(): Command {
  return new Command('suggest')
    .description('Print, as YAML, the tree that the profiles alone would draw for a host; the comparison goes to standard error.')
    .addArgument(new Argument('<host>', 'the host to draw for'))
    .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
    .option('--deepest <number>', 'most checks on a path', '6')
    .action(async (id: string, options: { trees: string; deepest: string }) => {
      const guide = await requireGuide(options.trees)
      const host = guide.hosts.find((one) => one.id === id)
      const deepest = Number(options.deepest)
      if (host === undefined || !Number.isInteger(deepest) || deepest < 1 || deepest > 12) {
        notice(host === undefined ? `There is no host "${id}". ${suggest(closestNames(id, guide.hostNumbers.keys()))}`.trim() : `--deepest is "${options.deepest}". Expected a whole number from 1 to 12.`)
        process.exitCode = 1
        return
      }
      const drawn = drawTree(guide, host, deepest)
      const { treeChecks, treeRight } = reportHost(guide, host, 2000, seededRandom(1))
      print(treeAsYaml(host, drawn).trimEnd())
      notice(
        `Drawn tree: ${drawn.expectedChecks.toFixed(2)} checks on average, ${(100 * drawn.settled).toFixed(1)} % of plants end in a problem.`,
        `Authored tree: ${treeChecks.toFixed(2)} checks on average, right for ${(100 * treeRight).toFixed(1)} % of made-up cases by itself.`,
      )
    })
}
