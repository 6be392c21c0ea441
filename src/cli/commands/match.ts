import { createInterface } from 'node:readline'
import { Command } from 'commander'
import { z } from 'zod'
import { guideIn, languagesOf } from '../../guide/index.js'
import { buildMatchIndex, matchLine } from '../../match/index.js'
import { DEFAULT_TREES, requireGuide } from '../guide-option.js'
import { notice, print } from '../terminal.js'

const JsonLine = z.object({ text: z.string() })

/** `frondline match`: takes a question as words, or reads questions, one a line, and writes what was heard in each as one JSON line. */
export function matchCommand(): Command {
  return new Command('match')
    .description('Write what is heard in a question as one JSON line; without a question, read them from standard input, one a line (plain, or JSON with "text").')
    .argument('[question...]', 'the asker\'s words')
    .option('--trees <dir>', 'folder that holds the guide', DEFAULT_TREES)
    .option('--language <tag>', 'language the questions are asked in, such as es (default: the guide\'s own)')
    .addHelpText('after', '\nExamples:\n  frondline match "white powder on my rose leaves"\n  frondline match < questions.jsonl\n  echo "manchas negras en el rosal" | frondline match --language es')
    .action(async (question: string[], { trees, language }: { trees: string; language?: string }) => {
      const guide = await requireGuide(trees)
      const asked = language === undefined ? guide : guideIn(guide, language)
      if (asked === guide && language !== undefined && language.toLowerCase().split('-')[0] !== guide.language) {
        notice(`The guide in "${trees}" has no words in "${language}". Expected one of: ${languagesOf(guide).join(', ')}.`)
        process.exitCode = 1
        return
      }
      const index = buildMatchIndex(asked)
      if (question.length > 0) {
        print(JSON.stringify(matchLine(index, question.join(' '))))
        return
      }
      if (process.stdin.isTTY) notice('Type a question and press Enter. End with Ctrl-D.')
      let number = 0
      for await (const line of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
        number += 1
        if (line.trim() === '') continue
        const text = textOf(line)
        if (text === null) {
          notice(`Line ${number} is a JSON object without a "text" that is a string. Expected {"text": "the question"}.`)
          process.exitCode = 1
        } else print(JSON.stringify(matchLine(index, text)))
      }
    })
}

/** The question in one line: the `text` of a JSON object, or the line itself. Null for an object without one. */
function textOf(line: string): string | null {
  if (!line.trimStart().startsWith('{')) return line
  try {
    const parsed = JsonLine.safeParse(JSON.parse(line))
    return parsed.success ? parsed.data.text : null
  } catch {
    return line // words that only begin with a brace
  }
}
