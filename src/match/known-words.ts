import type { Guide } from '../guide/index.js'
import { tokenize } from './tokens.js'

/**
 * The guide's own running text, as a list of words that are right as they stand. A word in it is never taken for a
 * misspelled plant or complaint: without this, "rows" would be a rose and "pest" a pea.
 */
export function knownWords(guide: Guide): ReadonlySet<string> {
  const words = new Set(COMMON)
  const add = (text: string): void => {
    for (const token of tokenize(text)) words.add(token.text)
  }
  for (const check of guide.checks) {
    for (const text of [check.ask, check.how, check.why, ...check.answers.map(({ label }) => label)]) add(text)
  }
  for (const problem of guide.problems) {
    const { bottomLine, doNow, notWorthDoing, nextYear, spray } = problem.advice
    for (const text of [problem.what, bottomLine, spray, ...doNow, ...notWorthDoing, ...nextYear, ...problem.cautions]) add(text)
  }
  for (const redFlag of guide.redFlags) {
    for (const text of [redFlag.title, ...redFlag.card.doNow, ...redFlag.card.doNot]) add(text)
  }
  return words
}

/** Everyday words one slip from a plant name or complaint word, which the guide's text may not happen to hold. */
const COMMON: readonly string[] = `
  rows prose roses rise nose hose those whose close posed apply ample maples simple temple peas pests pears beans means beards
  hostas hosts hosted most ghosts roots boots books looks tools pools cools holes poles moles homes hopes role sports shots spits
  spotted pots shops stops slips slops brown crown drown frown black block blank flack leaves leaver levels lever learn leads leaps
  white while write quite waste water later after alter whiter winter wonder wander yellow fellow mellow hollow follow bellow
  table tables cable stable taste tasted paste patch match watch catch batch bunch lunch lime limes line lines time times mint hint
  place plane planes plate plates plans plains paint point print grass glass class brass grape grade grave drapes onion union opinion
  carrot parrot cherry sherry merry berry very every melon lemon demon peach beach reach teach each plum plumb pulp pump lump
  flower flour floor flows allow lawn dawn fawn drawn lawyer lately lattice letter letters better bitter butter matter
  orchid orchard orange range potato tomorrow thanks think thing strange storage trouble house horse mouse course nurse purse
  market basket bucket racket packet picked licked kicked ticked raised rained ruined trained drained friend family children
  morning evening weather whether either neither neighbor neighbour outside inside beside someone anyone another mother brother
  sister father daughter husband wife about above around almost always never often usually maybe great grate grown grows
  gardening gardener gardeners squashed squashing early earlier earliest rides ride rode rope ropes belt belts bluish blueish greenish pinkish squished pants tears basic basics basis
  monster monsters arise arises bench benches popular considers considered clever tries tried speech hears arrow arrows pages spelling
  role settling settled panes pane confer peers silly minus captures clearer frees current currently slots chart charts graph theme speeding
  backyard blooming checking completed complete completely contract different differently difference dozen draining fertilize fertilized
  flaming former invading invade portion portions produce produced producer produces removed safely soaker sprawling strangely thinned thriving
  attach attack attacked backing badges banner bubble clutter closest collected collects compose concerns confirm confuse connected consulted
  creating customary decides deliberate demanded doubly easing expose exposed exposes expire expired feature featuring figuring filed flattening
  forget furnished garbage garage granting granular identity ignore ignored include inclusion informed inspect inspected insert inserted inserting
  instruction leading linked linking maintain marking narrower narrowed placed placing posting possible possibly preserve printing processing
  production project projects promise promised prompting proposed provided published ranking reaching realize reduction relation release released
  repeating reporting respond responded retrieve revealed reversed rotating samples scanning scoring seeking served server shared shares shift
  shipped shorter sliding smashing stale starts stated stating storing strengthen struck substitute supplied supported supposed supposedly
  thorough timer titled transform trusting tuned tuning walker wishing withdraw wording worker workers
  slower wraps wrapped roman neater eager games unions master focus purge candidate candidates likeness commander sprayer sprayers nibble scared scarred sticking working chilly pile piles piled barrow barrows wheelbarrow narrow harrow
`.trim().split(/\s+/u)
