import type { LanguageReport } from '../guide/index.js'

/** More texts of one file than this are counted, not named. */
const MOST_NAMED = 8

/** How far a guide is translated, as lines: hosts begun or claimed complete with what they lack, then how many are not begun. */
export function printLanguageReport({ language, rows }: LanguageReport): string[] {
  const begun = rows.filter(({ files, claimed }) => claimed || files[0]?.isThere === true)
  const lines = begun.flatMap(({ name, claimed, files }) => {
    const missing = files.reduce((sum, file) => sum + file.missing.length, 0)
    const outOfDate = files.reduce((sum, file) => sum + file.outOfDate.length, 0)
    return [
      `${name}: ${claimed ? 'complete by its own word, ' : ''}${files.filter(({ isThere }) => isThere).length} of ${files.length} files, ${missing} texts missing, ${outOfDate} out of date`,
      ...files.flatMap((file) => [
        ...(file.isThere ? [] : [`  ${file.path} is not there`]),
        ...(file.isThere && file.missing.length > 0 ? [`  ${file.path} lacks ${named(file.missing)}`] : []),
        ...(file.outOfDate.length > 0 ? [`  ${file.path} is out of date in ${named(file.outOfDate)}`] : []),
      ]),
    ]
  })
  const rest = rows.filter((row) => !begun.includes(row)).map(({ name }) => name)
  return [...lines, rest.length === 0 ? `Everything is begun in "${language}".` : `Not begun in "${language}": ${rest.join(', ')}.`]
}

function named(texts: readonly string[]): string {
  const some = texts.slice(0, MOST_NAMED).join('; ')
  return texts.length > MOST_NAMED ? `${some}; and ${texts.length - MOST_NAMED} more` : some
}
