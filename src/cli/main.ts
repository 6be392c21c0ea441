import { program } from './program.js'
import { endWhenNobodyReads } from './terminal.js'

endWhenNobodyReads()
await program().parseAsync()
