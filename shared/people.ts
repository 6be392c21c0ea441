import { z } from 'zod'

export const Role = z.enum(['volunteer', 'specialist', 'administrator']).meta({ id: 'Role' })

export const SignIn = z.strictObject({
  name: z.string().trim().min(1).max(80),
  password: z.string().min(1).max(200),
}).meta({ id: 'SignIn' })

export const Person = z.object({ name: z.string(), role: Role }).meta({ id: 'Person' })

export type Role = z.infer<typeof Role>
export type SignIn = z.infer<typeof SignIn>
export type Person = z.infer<typeof Person>
