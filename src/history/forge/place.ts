/** Where the API is, and what the repository is called there. */

export type ForgePlace = { readonly api: string; readonly repository: string }

type Asked = {
  readonly api: string | undefined
  /** `owner/name` */
  readonly repository: string | undefined
  /** Address of the repository as `campaign.yaml` has it, `https://host/owner/name`. */
  readonly address: string | undefined
}

const NAME = /^[\w.-]+\/[\w.-]+$/

const LOCAL = new Set(['localhost', '127.0.0.1', '[::1]'])

/** The public host has its API at a host of its own, an own server under `/api/v3`. */
const apiOf = (address: URL): string =>
  address.host === 'github.com' ? 'https://api.github.com' : `${address.origin}/api/v3`

/** The place, or what is missing in one sentence. The API must be `https`, since a token is sent there. */
export const forgePlace = ({ api, repository, address }: Asked): ForgePlace | string => {
  const url = address === undefined ? null : URL.parse(address)
  if (address !== undefined && repository === undefined && !url) {
    return `forge: ${address} of shared/campaign.yaml is no address; write https://host/owner/name`
  }
  const named = repository ?? url?.pathname.replace(/^\//, '').replace(/(?:\.git)?\/?$/, '')
  if (named === undefined || named === '') {
    return 'it is not known which repository to ask for; set `forge: https://host/owner/name` in shared/campaign.yaml, or --repository owner/name'
  }
  if (!NAME.test(named) || named.split('/').some((part) => /^\.+$/.test(part))) {
    return `${named} is no repository of a forge; write owner/name`
  }
  const base = URL.parse(api ?? (url ? apiOf(url) : 'https://api.github.com'))
  if (!base) return `${api} is no address of an API; write https://host/path`
  if (base.protocol !== 'https:' && !(base.protocol === 'http:' && LOCAL.has(base.hostname))) {
    return `${base.origin} is not asked, since a token would travel in the open; give an address with https`
  }
  if (base.username !== '' || base.password !== '') return 'the address of the API must not hold a password'
  return { api: `${base.origin}${base.pathname.replace(/\/+$/, '')}`, repository: named }
}
