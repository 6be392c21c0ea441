import { expect, it } from 'vitest'
import { wholeGuide } from '../whole-guide.js'

it('the demonstration guide: only the unknown plant stands for any plant; a tree with a way to insects or poison is still its own', async () => {
  const { hosts } = await wholeGuide()
  expect(hosts.filter(({ isOfAnyPlant }) => isOfAnyPlant).map(({ id }) => id)).toEqual(['unknown-plant'])
  const leadsOn = hosts.filter(({ nodes }) => nodes.some(({ answers }) => answers.some(({ kind }) => kind === 'host')))
  expect(leadsOn.length).toBeGreaterThan(1)
})
