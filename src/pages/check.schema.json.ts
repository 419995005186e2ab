import type { APIRoute } from 'astro'
import { checkJsonSchema } from '../views/check-schema.ts'

export const GET: APIRoute = () => new Response(`${JSON.stringify(checkJsonSchema(), null, 1)}\n`)
