import { describe, expect, it } from 'vitest'
import { drawTree, makeCase, playCase, reportHost, seededRandom } from '../../src/engine/index.js'
import { compileGuide } from '../../src/guide/index.js'
import { treeAsYaml } from '../../src/cli/tree-yaml.js'
import { lettuceFiles, lettuceGuide, TODAY } from '../guide/lettuce-world.js'
import { wholeGuide } from '../whole-guide.js'

const guide = lettuceGuide()
const lettuce = guide.hosts[0]
if (lettuce === undefined) throw new Error('The lettuce world has no lettuce.')

describe('made-up cases', () => {
  it('are the same for the same seed', () => {
    const draw = (seed: number) => Array.from({ length: 5 }, ((random) => () => makeCase(guide, lettuce, random))(seededRandom(seed)))
    expect(draw(7)).toEqual(draw(7))
    expect(draw(7)).not.toEqual(draw(8))
  })

  it('show each answer about as often as the profile says', () => {
    const random = seededRandom(3)
    const place = lettuce.checks.indexOf(guide.checkNumbers.get('slime') ?? -1)
    const slugs = lettuce.problems.indexOf(guide.problemNumbers.get('slugs') ?? -1)
    const answers = Array.from({ length: 6000 }, () => makeCase(guide, lettuce, random)).filter(({ row }) => row === slugs).map((made) => made.answers[place])
    const yes = answers.filter((answer) => answer === 0).length / answers.length
    // usually : sometimes is .751 : .25, and three in a hundred answers are misread.
    expect(yes).toBeGreaterThan(0.71)
    expect(yes).toBeLessThan(0.78)
  })

  it('end, each of them', () => {
    const random = seededRandom(5)
    for (let turn = 0; turn < 200; turn++) expect(playCase(guide, lettuce, makeCase(guide, lettuce, random)).asked.length).toBeLessThanOrEqual(12)
  })
})

describe('the report of a host that leads on to others', () => {
  it('judges as many cases as were wanted, of those that stay', async () => {
    const whole = await wholeGuide()
    const host = whole.hosts.find(({ isOfAnyPlant }) => isOfAnyPlant)
    const report = host && reportHost(whole, host, 40, seededRandom(1))
    expect(report?.cases).toBe(40)
    // About four in five are led on.
    expect(report?.passedOn).toBeGreaterThan(0.6)
  })
})

describe('the report of a host', () => {
  const report = reportHost(guide, lettuce, 2000, seededRandom(1))

  it('gives the entropy bound in checks: H over log2 of the most answers', () => {
    // Three equally common problems: H = log2 3; checks of 3, 3 and 2 answers: one of three answers could tell them all at best.
    expect(report.leastChecks).toBeCloseTo(1, 10)
    expect(report.engineChecks).toBeGreaterThan(report.leastChecks)
  })

  it('says what a check tells on average: less than all that three answers could tell', () => {
    expect(report.bitsACheck).toBeGreaterThan(0.3)
    expect(report.bitsACheck).toBeLessThan(Math.log2(3))
    // What was told is no more than there was to tell: H of three problems alike and *something not listed here*, which has 5 %.
    expect(report.bitsACheck * report.engineChecks).toBeLessThan(0.95 * Math.log2(3 / 0.95) - 0.05 * Math.log2(0.05))
  })

  it('claims about what it earns', () => {
    expect(report.accuracy).toBeGreaterThan(0.85)
    expect(report.calibrationError).toBeLessThan(0.08)
  })

  it('says how often nothing listed leads, which is no right guess and no wrong one of the list', () => {
    const random = seededRandom(1)
    const played = Array.from({ length: 2000 }, () => playCase(guide, lettuce, makeCase(guide, lettuce, random)))
    expect(report.notListedLeads).toBe(played.filter(({ leading }) => leading < 0).length / played.length)
    expect(report.notListedLeads).toBeGreaterThan(0)
    expect(report.accuracy + report.notListedLeads).toBeLessThanOrEqual(1)
  })

  it('names the check that tells most', () => {
    expect(report.earnsMost?.check).toBe('leaf-top')
  })

  it('names two problems that nothing tells apart', () => {
    const twins = lettuceGuide({
      'problems/tipburn.yaml': (text) => text.replace('brown edges: almost always', 'ragged holes: almost always').replace('no: almost always', 'yes: usually, no: sometimes'),
    })
    const host = twins.hosts[0]
    expect(host && reportHost(twins, host, 10, seededRandom(1)).inseparable).toEqual([['slugs', 'tipburn']])
  })
})

describe('a drawn tree', () => {
  it('compiles in place of the authored one and settles most plants', () => {
    const drawn = drawTree(guide, lettuce)
    expect(drawn.settled).toBeGreaterThan(0.8)
    const { errors } = compileGuide(lettuceFiles({ 'hosts/lettuce.yaml': treeAsYaml(lettuce, drawn) }), { today: TODAY })
    expect(errors).toEqual([])
  })
})
