import { caseByLink, type Db } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import { type CaseFile, caseFileFromRow } from './case-file.js'

/** The case with this link as it is now, or a fault. */
export async function findCase(db: Db, link: string): Promise<CaseFile> {
  const row = await caseByLink(db, link)
  if (row === undefined) throw new DeskFault('CASE_NOT_FOUND')
  return caseFileFromRow(row)
}
