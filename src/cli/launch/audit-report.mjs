// What a report of `npm audit --json` (version 2) means for us. Pure, so that the tests can hold it against reports.

const GRAVE = new Set(['high', 'critical'])

/**
 * Reads a report. Null when the registry gave none: many mirrors do not have this service.
 * Accepted weaknesses count until their day (YYYY-MM-DD), and must say why.
 * @param text what npm printed
 * @param accepted `{ advisory, why, until }` of each weakness that does not reach us
 * @param today YYYY-MM-DD
 * @returns `{ grave, accepted, lesser }`, each a list of sentences, or null
 */
export function readAuditReport(text, accepted, today) {
  const advisories = advisoriesIn(text)
  if (advisories === null) return null
  const valid = new Map(accepted.filter(({ until }) => today <= until).map((one) => [one.advisory, one]))
  const report = { grave: [], accepted: [], lesser: [] }
  for (const { id, name, severity, title } of advisories) {
    const sentence = `${name}: ${title} (${severity}, ${id})`
    const known = valid.get(id)
    if (!GRAVE.has(severity)) report.lesser.push(sentence)
    else if (known === undefined) report.grave.push(sentence)
    else report.accepted.push(`${sentence}: accepted until ${known.until}, because ${known.why}`)
  }
  return report
}

/** Each advisory once, however many packages it reaches through others. */
function advisoriesIn(text) {
  const packages = parsed(text)?.vulnerabilities
  if (typeof packages !== 'object' || packages === null) return null
  const found = new Map()
  for (const { via = [] } of Object.values(packages)) {
    for (const advisory of via) {
      // A plain name says through which other package it comes; that one is listed by itself.
      if (typeof advisory !== 'object' || advisory === null) continue
      const { url = '', name = 'a package', severity = 'critical', title = 'a weakness without a title' } = advisory
      const id = /GHSA(-[a-z0-9]{4}){3}/.exec(url)?.[0] ?? url
      found.set(id, { id, name, severity, title })
    }
  }
  return [...found.values()]
}

function parsed(text) {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}
