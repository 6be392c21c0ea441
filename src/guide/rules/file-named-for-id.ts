import type { RuleContext } from '../rule-context.js'

/** Error. A file is named for the id inside it, so that a name leads to its file. */
export function fileNamedForIdRule(context: RuleContext): void {
  const { checks, problems, hosts, redFlags } = context.guide
  for (const { id } of [...checks.values(), ...problems.values(), ...hosts.values(), ...redFlags.values()]) {
    const file = id.at.file.path.split('/').pop()?.replace(/\.ya?ml$/, '')
    if (file === id.value) continue
    context.error({
      code: 'FILE_NAME', at: [id.at],
      message: `This file is called "${file}" but holds "${id.value}". Expected the file to be named ${id.value}.yaml.`,
    })
  }
}
