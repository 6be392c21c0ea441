// A process of its own for the test of two writers: adds one to a counter, so many times.
import { keepSignInAttempt, openStore, signInAttempt } from '../../src/store/index.js'

const [home = '', times = '0'] = process.argv.slice(2)
const store = await openStore({ home, databaseUrl: process.env.DATABASE_URL ?? null })
for (let turn = 0; turn < Number(times); turn++) {
  await store.db.transaction().execute(async (trx) => {
    // Read first and then write what was read plus one: after a plain BEGIN one of two such writers would be refused.
    const failures = (await signInAttempt(trx, 'key'))?.failures ?? 0
    await keepSignInAttempt(trx, { attempt_key: 'key', failures: failures + 1, last_at: '2026-05-14', blocked_until: null })
  })
}
await store.close()
