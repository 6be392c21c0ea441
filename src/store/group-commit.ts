import type { Database, Statement } from 'better-sqlite3'
import { type CompiledQuery, type DatabaseConnection, type QueryResult, type SqliteDatabase, SqliteDriver } from 'kysely'

/** Who is told what becomes of transactions. */
export interface Ending {
  /** One is done; it is not on disk yet. */
  done(): void
  /** The one under way was undone. */
  undone(): void
  /** All that are done are on disk. */
  committed(): void
  /** None of those that are done will ever be on disk. */
  lost(): void
}

/** All that is said to the database about transactions. */
type Said = 'begin immediate' | 'commit' | 'rollback' | 'savepoint one' | 'release one' | 'rollback to one'

/** Somebody whose transaction is done and who waits to hear that it is on disk. */
interface Waiting {
  onDisk(): void
  lost(fault: unknown): void
}

/**
 * A SQLite connection that flushes once for all transactions that come in together. Flushing is most of what a small
 * write takes, and nothing else can be done meanwhile.
 *
 * Transactions still run one after the other, each in a savepoint of one that spans them, so each is undone by itself.
 * The spanning one is committed when all that the network has brought is worked off (`setImmediate`), and only then does
 * any of them count as committed: nobody hears 'kept' of what a loss of power could take. A statement outside of
 * transactions first ends the group, so it never sees what is not on disk. BEGIN IMMEDIATE, because a plain BEGIN takes the
 * write lock only at the first write: two processes that have both read by then cannot both go on, and SQLite refuses one
 * at once, however long the busy timeout.
 */
export class GroupingDriver extends SqliteDriver {
  readonly #database: Database
  readonly #ending: Ending
  readonly #statements: Record<Said, Statement>
  #group: Waiting[] | null = null

  constructor(database: Database, statements: SqliteDatabase, ending: Ending) {
    super({ database: statements })
    this.#database = database
    this.#ending = ending
    this.#statements = {
      'begin immediate': database.prepare('begin immediate'), commit: database.prepare('commit'), rollback: database.prepare('rollback'),
      'savepoint one': database.prepare('savepoint one'), 'release one': database.prepare('release one'),
      'rollback to one': database.prepare('rollback to one'),
    }
  }

  override async acquireConnection(): Promise<DatabaseConnection> {
    return new Turn(await super.acquireConnection(), () => { this.#endGroup() })
  }

  /** A turn is given back once, when its transaction is done and not when it is on disk: the next may go on meanwhile. */
  override async releaseConnection(turn?: DatabaseConnection): Promise<void> {
    if (turn instanceof Turn && turn.isOver) return
    if (turn instanceof Turn) turn.isOver = true
    await super.releaseConnection()
  }

  override async beginTransaction(turn: DatabaseConnection): Promise<void> {
    if (this.#group === null) {
      this.#run('begin immediate')
      this.#group = []
    }
    try {
      this.#run('savepoint one')
    } catch (fault) {
      // Nobody undoes what could not begin, and a group that holds the file for nobody would hold up all.
      if (this.#group.length === 0) this.#endGroup()
      throw fault
    }
    inTurn(turn).isTransaction = true
  }

  override async commitTransaction(turn: DatabaseConnection): Promise<void> {
    const group = this.#group
    if (group === null) throw new Error('A transaction of the store was committed that had not begun.')
    this.#run('release one')
    inTurn(turn).isTransaction = false
    this.#ending.done()
    if (group.length === 0) setImmediate(() => { void this.#endGroupInTurn() })
    const onDisk = new Promise<void>((resolve, reject) => { group.push({ onDisk: resolve, lost: reject }) })
    await this.releaseConnection(turn)
    await onDisk
  }

  override async rollbackTransaction(turn: DatabaseConnection): Promise<void> {
    // The group itself failed, and with it this transaction that was done.
    if (!inTurn(turn).isTransaction) return
    inTurn(turn).isTransaction = false
    this.#ending.undone()
    // A full disk, for one, makes SQLite undo everything by itself: the savepoint is gone, and so are those done before.
    if (!this.#database.inTransaction) this.#lose(new Error('The store undid a group of transactions because one of them failed on the way to the disk.'))
    else if (this.#group?.length === 0) {
      this.#group = null
      this.#run('rollback')
    } else {
      this.#run('rollback to one')
      this.#run('release one')
    }
  }

  override async destroy(): Promise<void> {
    this.#endGroup()
    await super.destroy()
  }

  async #endGroupInTurn(): Promise<void> {
    if (this.#group === null) return
    await super.acquireConnection()
    this.#endGroup()
    await super.releaseConnection()
  }

  #endGroup(): void {
    const group = this.#group
    if (group === null) return
    try {
      this.#run('commit')
    } catch (fault) {
      if (this.#database.inTransaction) this.#run('rollback')
      this.#lose(fault)
      return
    }
    this.#group = null
    this.#ending.committed()
    for (const { onDisk } of group) onDisk()
  }

  #lose(fault: unknown): void {
    const group = this.#group ?? []
    this.#group = null
    this.#ending.lost()
    for (const { lost } of group) lost(fault)
  }

  #run(name: Said): void {
    this.#statements[name].run()
  }
}

/** The connection for as long as one transaction, or one statement outside of transactions, has it. */
class Turn implements DatabaseConnection {
  readonly #connection: DatabaseConnection
  readonly #endGroup: () => void
  isTransaction = false
  isOver = false

  constructor(connection: DatabaseConnection, endGroup: () => void) {
    this.#connection = connection
    this.#endGroup = endGroup
  }

  executeQuery<Row>(query: CompiledQuery): Promise<QueryResult<Row>> {
    if (!this.isTransaction) this.#endGroup()
    return this.#connection.executeQuery(query)
  }

  streamQuery<Row>(query: CompiledQuery, chunkSize?: number): AsyncIterableIterator<QueryResult<Row>> {
    if (!this.isTransaction) this.#endGroup()
    return this.#connection.streamQuery(query, chunkSize)
  }
}

function inTurn(turn: DatabaseConnection): Turn {
  if (turn instanceof Turn) return turn
  throw new Error('The store was given a connection that is not its own.')
}
