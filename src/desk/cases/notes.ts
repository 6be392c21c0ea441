import { z } from 'zod'
import { caseChanges, type Db } from '../../store/index.js'

const NoteContent = z.object({ text: z.string() })

/** A volunteer's notes on a case, first note first. */
export async function notesOf(db: Db, caseId: number): Promise<{ text: string; at: string }[]> {
  const rows = await caseChanges(db, caseId, 'note')
  return rows.map(({ content, at }) => ({ text: NoteContent.parse(JSON.parse(content)).text, at }))
}
