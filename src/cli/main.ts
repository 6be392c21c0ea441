import { program } from './program.js'

await program().parseAsync()
