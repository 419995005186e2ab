/** The base path of this build, with a slash at its end; put in by `astro.config.mjs`. */
declare const SITE_BASE: string

export const base = SITE_BASE
