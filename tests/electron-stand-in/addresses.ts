/** Where a custom scheme lies in stock Chromium: a host that cannot exist, because `.invalid` is reserved (RFC 2606). */
const RESERVED = 'invalid';

/** What `registerSchemesAsPrivileged` was told about a scheme, as far as a page can notice it. */
export interface SchemePrivileges {
  readonly secure: boolean;
  readonly supportFetchAPI: boolean;
}

/** Schemes by name, with what each may do. */
export type Schemes = ReadonlyMap<string, SchemePrivileges>;

/** An address of the program as Chromium is given it: droplight://app/a → https://app.droplight.invalid/a. Others stay. */
export function inChromium(address: string, schemes: Schemes): string {
  const parts = /^([a-z][a-z0-9+.-]*):\/\/([^/?#]*)(.*)$/is.exec(address);
  const scheme = parts?.[1]?.toLowerCase();
  const privileges = scheme === undefined ? undefined : schemes.get(scheme);
  if (!parts || !privileges) return address;
  return `${privileges.secure ? 'https' : 'http'}://${parts[2]}.${scheme}.${RESERVED}${parts[3]}`;
}

/** An address of Chromium as the program knows it; the way back of `inChromium`. */
export function inProgram(address: string, schemes: Schemes): string {
  return ownAddress(address, schemes)?.address ?? address;
}

/** The scheme and the address of the program behind an address of Chromium; null when it is somewhere else. */
export function ownAddress(
  address: string,
  schemes: Schemes,
): { readonly scheme: string; readonly address: string } | null {
  const parts = new RegExp(`^(https?)://([^/?#]*)\\.([a-z0-9+-]+)\\.${RESERVED}(?=[/?#]|$)(.*)$`, 'is').exec(address);
  const scheme = parts?.[3];
  const privileges = scheme === undefined ? undefined : schemes.get(scheme);
  if (!parts || scheme === undefined || !privileges) return null;
  if ((parts[1] === 'https') !== privileges.secure) return null;
  return { scheme, address: `${scheme}://${parts[2]}${parts[4]}` };
}
