import { handOverReasons, type HandOverReason } from '../../engine/index.js'
import type { FrequencyWord } from '../../guide/index.js'

/** What the service itself says to askers, in English. Short words, short sentences. */
export const en = {
  /** Terms of the scale in `views/sureness.ts`, surest first. */
  sureness: [
    'almost certain', 'extremely likely', 'very likely', 'likely', 'about as likely as not', 'unlikely', 'very unlikely',
    'extremely unlikely', 'almost impossible',
  ] as Sureness,

  notListed: { name: 'Something not listed here', what: 'A cause that this guide does not know.' },
  noSpray: 'No spray is needed.',

  /** Frequency words as they follow 'seen with this'. */
  seen: {
    'always': 'always', 'almost always': 'almost always', 'very often': 'very often', 'usually': 'usually', 'often': 'often',
    'as often as not': 'as often as not', 'sometimes': 'sometimes', 'occasionally': 'occasionally', 'seldom': 'seldom',
    'rarely': 'rarely', 'almost never': 'almost never', 'never': 'never',
  } as Record<FrequencyWord, string>,

  /** Why a case is handed over, where the tree itself does not say. */
  because: handOverReasons as Record<HandOverReason, string>,

  /** The parts of the advice as a specialist begins an answer from it. */
  answer: { doNow: 'Do now', notWorthDoing: 'Not worth doing', nextYear: 'Next year', cautions: 'Take care' },

  letter: {
    received: {
      subject: (ticket: number) => `your question has arrived (ticket ${ticket})`,
      arrived: (helpline: string, ticket: number, hours: number) => `Your question has reached a specialist of the ${helpline}. It has the number ${ticket}. We aim to answer within ${hours} hours.`,
      link: 'Here you can read it, add photos and see the answer. Whoever has this link can do the same, so keep it to yourself:',
      mistake: 'If you did not ask us anything, somebody gave us your address by mistake, and you need do nothing.',
    },
    askedBack: {
      subject: (ticket: number) => `one more thing to look at (ticket ${ticket})`,
      needs: (ticket: number) => `To answer your question, ticket ${ticket}, the specialist needs to know a little more.`,
      link: 'Please look at what is asked here. "Not sure" is a good answer too:',
    },
    answered: {
      subject: (ticket: number) => `the answer to your question (ticket ${ticket})`,
      answered: (ticket: number) => `The specialist has answered your question, ticket ${ticket}.`,
      changed: (ticket: number) => `The specialist has changed the answer to your question, ticket ${ticket}.`,
      about: (problem: string) => `It is about: ${problem}.`,
      link: 'The whole sheet with everything you found:',
      cautions: 'Before you spray anything: the label is the law, and local rules come first. Nothing here says that a plant can be eaten. Leave work on large trees to a qualified person.',
    },
    danger: (calls: string) => `Do not wait for a letter when somebody may be poisoned or in danger. Call at once: ${calls}.`,
  },
}

/** Nine terms, from the surest to the least likely. */
type Sureness = readonly [string, string, string, string, string, string, string, string, string]

export type DeskWording = typeof en
