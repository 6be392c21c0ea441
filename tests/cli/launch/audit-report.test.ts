import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { readAuditReport } from '../../../src/cli/launch/audit-report.mjs'

/** As npm 11 prints it with `--json` (auditReportVersion 2), the parts that are read; form from memory, packages invented. */
const report = (severity: string): string => JSON.stringify({
  auditReportVersion: 2,
  vulnerabilities: {
    'leaf-parser': {
      name: 'leaf-parser', severity, isDirect: false, effects: ['leaf-server'],
      via: [{ source: 1, name: 'leaf-parser', dependency: 'leaf-parser', title: 'Endless loop on long leaves', url: 'https://github.com/advisories/GHSA-aaaa-bbbb-cccc', severity, range: '<2' }],
    },
    'leaf-server': { name: 'leaf-server', severity, isDirect: true, via: ['leaf-parser'], effects: [] },
  },
  metadata: { vulnerabilities: { info: 0, low: 0, moderate: 0, high: 2, critical: 0, total: 2 } },
})
const accepted = [{ advisory: 'GHSA-aaaa-bbbb-cccc', why: 'leaves here are short', until: '2026-12-31' }]

describe('known weaknesses of packages', () => {
  it('are grave where they are high or critical, each told once however many packages it reaches', () => {
    for (const severity of ['high', 'critical']) {
      expect(readAuditReport(report(severity), [], '2026-11-28')).toEqual({
        grave: [`leaf-parser: Endless loop on long leaves (${severity}, GHSA-aaaa-bbbb-cccc)`], accepted: [], lesser: [],
      })
    }
  })

  it('are only told where they are less than that', () => {
    expect(readAuditReport(report('moderate'), [], '2026-11-28')).toMatchObject({ grave: [], lesser: [expect.stringContaining('moderate')] })
  })

  it('may be accepted for a reason, until its day', () => {
    expect(readAuditReport(report('high'), accepted, '2026-12-31')).toMatchObject({ grave: [], accepted: [expect.stringContaining('leaves here are short')] })
    expect(readAuditReport(report('high'), accepted, '2027-01-01')?.grave).toHaveLength(1)
  })

  it('are none in a report without any, and unknown where the registry gave no report', () => {
    expect(readAuditReport('{"auditReportVersion":2,"vulnerabilities":{}}', [], '2026-11-28')).toEqual({ grave: [], accepted: [], lesser: [] })
    // What a mirror answers that does not have the service, and what no answer leaves.
    for (const text of ['{"message":"405 Method Not Allowed","statusCode":405}', '', 'null']) expect(readAuditReport(text, [], '2026-11-28')).toBeNull()
  })

  it('are accepted in our own list only with a reason and a day', () => {
    const own: unknown = JSON.parse(readFileSync('src/cli/launch/accepted-weaknesses.json', 'utf8'))
    z.array(z.strictObject({ advisory: z.string().regex(/^GHSA-/), why: z.string().min(20), until: z.iso.date() })).parse(own)
  })
})
