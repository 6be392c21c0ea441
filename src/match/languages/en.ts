import { DANGER_WEIGHTS } from '../danger-weights.js'
import { JOB_WEIGHTS } from '../job-weights.js'
import { singular, stem } from '../stems.js'
import { STOP_WORDS } from '../stop-words.js'
import { ENGLISH_EVERYDAY_WORDS } from './english-everyday-words.js'
import { listed, partNames, type Speech } from './speech.js'

/** English, as it is spoken in questions about plants. */
export const ENGLISH: Speech = {
  dangerLetters: DANGER_WEIGHTS,
  jobLetters: JOB_WEIGHTS,
  stem, singular, stopWords: STOP_WORDS, everydayWords: ENGLISH_EVERYDAY_WORDS, silent: new Set(),
  negations: listed('no not never without wont cant cannot dont doesnt didnt isnt arent wasnt werent hasnt havent hadnt couldnt wouldnt neither nor none nothing'),
  deniesWithTo: listed('yet refuse refuses refused refusing fail fails failed failing'),
  passesNegation: listed('give gives gave given giving produce produces produced producing bear bears bore bearing single find finding found spot spotted notice noticed detect any sign signs trace white grey gray black brown yellow green orange red pink purple pale dark'),
  endsNegation: listed('but only just except because and so although though however'),
  names: {
    between: listed('a an the my our your his her their some that this old big large tall little small neighbours neighbors neighbour neighbor tiny miniature'),
    nearby: new Set([
      'near', 'nearby', 'beside', 'under', 'underneath', 'beneath', 'below', 'behind', 'by', 'between', 'alongside', 'against', 'opposite',
      'around', 'among', 'amongst', 'next', 'like', 'unlike', 'not', 'except', 'besides', 'beyond', 'nor',
      'size of', 'shape of', 'big as', 'large as', 'small as', 'thick as', 'bigger than', 'larger than', 'smaller than', 'next to', 'close to', 'on to', 'near to', 'apart from', 'other than', 'rather than', 'such as', 'similar to', 'compared to', 'front of', 'instead of', 'looks like', 'smells of', 'smells like', 'away from', 'adjacent to', 'where the', 'bed with', 'border with', 'pot with', 'planted with', 'together with', 'along with', 'on from',
    ]),
    alongside: new Set(['nearby', 'close by', 'next door', 'next to it', 'next to them', 'close to it', 'beside it', 'beside them', 'near it', 'near them', 'alongside it', 'in it', 'around it', 'by it', 'by them', 'is the same', 'are the same', 'has the same', 'have the same', 'got the same', 'went the same', 'is doing the', 'are doing the', 'in same bed']),
    // English says the thing last ("apple jam"): the guide's `things`.
    thingsOf: new Set(),
    being: listed('is are was were look looks seem seems stay stays do'),
    degrees: listed('all still perfectly quite really looking doing very so pretty absolutely'),
    becoming: listed('went gone turned turning going nearly almost are'),
    colours: listed('lemon lime beetroot plum cherry peach raspberry olive'),
    fine: listed('fine ok okay alright healthy unaffected good great well perfect happy untouched clean'),
    inPlace: listed('in on across over onto into from off through throughout around of for'),
  },
  answers: {
    joining: listed('a an the my our is are was were be been has have had its it in on at of'),
    passedOver: listed(`a an the my our your his her its their this these those that of is are was were be been has have had just so very really all quite some
  now also got getting get going gone little bit there im ive`),
    denying: listed('no not never without wont cant cannot dont doesnt didnt isnt arent hasnt havent'),
    asking: listed('if whether should maybe perhaps might could would unless wonder wondering unsure than prevent avoid stop worry worried afraid fear think thinks thought reckon reckons suspect suspects guess say says said told hear heard read unlike isnt arent instead'),
    colours: listed('white grey gray black brown yellow green orange red pink purple pale dark fine sooty'),
    following: listed('overnight suddenly quickly slowly inside outside underneath everywhere after since too again then below above'),
    clauseWords: listed('and but or while whereas plus'),
    // "Is there white fuzz", "are they aphids": asked, not told.
    question: /\b(?:is|are|was|were|does|do|did|will) (?:it|there|they|this|these|those|that|you)\b/,
    somebodyElses: /\b(?:next doors?|neighbou?rs|other (?:plants?|ones?|trees?|roses))\b/,
    anotherYear: /\b(?<!\b(?:planted|bought|moved|sown|put in|pruned|given|got) (?:it |them |in )?)(?:last (?:year|season|summer|spring|autumn)|(?:years?|seasons|winters|summers) (?:ago|back)|previous (?:years?|seasons?)|years past)\b|\bused to\b/,
    over: /\b(?:no longer|not any more|anymore|ruled out|rule out|stopped being|instead of|free (?:of|from)|in case(?: of)?|hardly|barely|scarcely|(?:look|looks|looked|looking|check|checked|checking|search|searched|searching|hunted) for)(?: (?:any|the|a|more|signs of))?(?: \w+)?$/,
    takenBack: /^(?:maybe|perhaps|possibly|i think|i guess|not sure|im not sure)\b|^, (?:maybe|perhaps|possibly|not sure|im not sure) ,|\b(?:and|but)(?: i)? (?:found|saw|see|there (?:is|are|was|were)) (?:none|nothing|nowt)\b|\b(?:but|and) (?:that|it|they|this|those)(?: has| have| is| are|s)?(?: now| all)? (?:gone|stopped|cleared|disappeared|vanished|washed off)(?: up| away)?(?: now| again| since)? ,/,
    likened: /\b(?:look|looks|looked|looking|seem|seems|seemed|bit|just) (?:like|as if)(?: \w+){1,4}$/,
    unlikened: /\b(?:but|only|though|yet|except) (?:it|they|that|its|theyre|thats|this)(?: is| are| was| were| really)? ?(?:isnt|arent|is not|are not|not|wasnt|werent|doesnt|dont|cant|cannot)\b/,
    askedOfAll: /^(?:do|does|did|will|would|can|could) (?!you|u|i|we|anyone|anybody|someone|somebody)(?:\w+ ){1,3}(?:get|have|catch|show|become|turn|go|suffer)\b/,
    besides: /\b(?:beside|next to|near|behind|opposite) (?:it|mine|ours|them)\b/,
    beforeThat: listed('before until till'),
    noLonger: listed('then'),
    once: /\bit (?:was|had been)$/,
    times: /\b(?:spring|summer|autumn|winter|january|february|march|april|may|june|july|august|september|october|november|december|overnight|days?|weeks?|months?|years?)\b/,
    acts: listed('cut pruned prune pruning trimmed clipped planted planting sown sowed sow sowing lifted moved moving transplanted repotted potted fed feed sprayed limed mulched bought'),
    recovering: listed('perk perks perked perking recover recovers recovered recovering revive revives revived better picks'),
    parts: partNames(['leaf frond needle', 'flower bloom blossom petal', 'fruit berry pod cob', 'root tuber']),
    ofAnotherYear: 'last',
  },
}
