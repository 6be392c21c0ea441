import { closestNames } from '../closest-names.js'
import type { RuleContext } from '../rule-context.js'

/** Error. Numbers that a red-flag card calls and districts that a worked case or `beside` names stand in region.yaml. */
export function knownRegionNamesRule(context: RuleContext): void {
  const { region, redFlags, cases } = context.guide
  if (region === null) return
  for (const { call } of redFlags.values()) {
    for (const name of call) {
      if (region.numbers.has(name.value)) continue
      context.error({
        code: 'UNKNOWN_NUMBER', at: [name.at], nearest: closestNames(name.value, region.numbers.keys()),
        message: `region.yaml gives no number called "${name.value}". Expected one of its \`numbers\`.`,
      })
    }
  }
  for (const { district, others } of region.beside) {
    for (const name of [district, ...others]) {
      if (region.districts.has(name.value)) continue
      context.error({
        code: 'UNKNOWN_DISTRICT', at: [name.at], nearest: closestNames(name.value, region.districts.keys()),
        message: `\`beside\` names "${name.value}", which is no district. Expected one of the \`districts\` above.`,
      })
    }
    for (const own of others.filter(({ value }) => value === district.value)) {
      context.error({
        code: 'UNKNOWN_DISTRICT', at: [own.at], nearest: [],
        message: `"${own.value}" is said to lie beside itself. Expected another of the \`districts\`.`,
      })
    }
  }
  for (const { district } of cases) {
    if (district === null || region.districts.has(district.value)) continue
    context.error({
      code: 'UNKNOWN_DISTRICT', at: [district.at], nearest: closestNames(district.value, region.districts.keys()),
      message: `region.yaml has no district "${district.value}". Expected one of its \`districts\`.`,
    })
  }
}
