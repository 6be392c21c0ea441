import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { buildMatchIndex, matchLine } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'
import { CALM, WORRIED } from './worried-and-calm.js'

const SecondQuestion = z.strictObject({
  text: z.string().min(1),
  host: z.string().nullable(),
  danger: z.enum(['ingestion', 'sap-or-spray', 'breathing', 'spray-misuse', 'tree-hazard', 'about-to-eat', 'self-harm', 'sting']).nullable(),
  outOfScope: z.boolean(),
  about: z.string().nullable(),
  stated: z.array(z.string()),
})

const index = buildMatchIndex(await wholeGuide())
const lines = (await readFile(join(import.meta.dirname, 'second-questions/questions.jsonl'), 'utf8')).trim().split('\n')
const questions = lines.map((line) => SecondQuestion.parse(JSON.parse(line)))

function emergencies(words: string): readonly string[] {
  return matchLine(index, words).redFlags
}

describe('what a worried person writes', () => {
  it.each(WORRIED)('is an emergency: %s', (words) => {
    expect(emergencies(words)).not.toEqual([])
  })

  it.each(CALM)('is none where nothing has happened: %s', (words) => {
    expect(emergencies(words)).toEqual([])
  })
})

describe('the second set of questions, by a writer who saw no rules', () => {
  it('raises an emergency for every danger', () => {
    expect(questions.filter(({ text, danger }) => danger !== null && emergencies(text).length === 0)).toEqual([])
  })

  it('raises none for the others', () => {
    expect(questions.filter(({ text, danger }) => danger === null && emergencies(text).length > 0)).toEqual([])
  })

  it('gives a question about poison as a caution, and no emergency', () => {
    const { redFlags, cautions } = matchLine(index, 'are moth orchids poisonous to cats? thinking of getting one')
    expect({ redFlags, cautions }).toEqual({ redFlags: [], cautions: ['poison-question'] })
  })

  it('names the right plant first in 97 of 100 questions that name one', () => {
    const named = questions.filter(({ host }) => host !== null)
    const right = named.filter(({ text, host }) => matchLine(index, text).hosts[0]?.host === host)
    expect(right.length / named.length).toBeGreaterThanOrEqual(0.97)
  })
})
