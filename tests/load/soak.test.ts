import pg from 'pg'
import { describe, expect, it } from 'vitest'
import { dropTestStore, storeUnderTest, testStore } from '../store/test-store.js'
import { soak } from './soak.js'

const KILLS = 5

describe('the service killed with -9 at random moments while askers are at work', () => {
  it('has every case, answer, photo, ticket and letter that it confirmed, each once', async () => {
    const home = `frondline-soak-${process.pid}-${Date.now()}`
    const { databaseUrl } = await testStore(home)
    try {
      const { lost, doubled, ...counts } = await soak({ kills: KILLS, databaseUrl: databaseUrl ?? null, askers: 3, say: () => undefined })
      expect({ lost, doubled }).toEqual({ lost: [], doubled: [] })
      expect(counts.kills).toBe(KILLS)
      for (const many of [counts.cases, counts.answers, counts.photos, counts.tickets, counts.letters]) expect(many).toBeGreaterThan(0)
      if (storeUnderTest() === 'PostgreSQL' && databaseUrl != null) expect(await rowsIn(databaseUrl)).toBeGreaterThanOrEqual(counts.tickets)
    } finally {
      await dropTestStore(home)
    }
  }, 600_000)
})

/** Proof that the run was really on PostgreSQL. */
async function rowsIn(url: string): Promise<number> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  const { rows } = await client.query<{ count: string }>('select count(*) from ticket')
  await client.end()
  return Number(rows[0]?.count)
}
