/**
 * The content security policy of the window, sent as a header by both carriers: own scripts, styles, fonts and pictures
 * only, nothing from outside, no inline code, no frames, no forms. `blob:` is for photos shown before they are stored. The one script that the window
 * starts beside itself, the worker that draws up a tree, is an own file; `droplight-worker` names it and nothing else.
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
  // The second name makes the address of the one worker (renderer/workers).
  'trusted-types svelte-trusted-html droplight-worker',
].join('; ');

/** Only the microphone, and only for the own page, which asks for it when its button is pressed. */
const PERMISSIONS_POLICY = [
  'microphone=(self)',
  ...['camera', 'geolocation', 'display-capture', 'usb', 'serial', 'hid', 'midi', 'payment'].map(
    (feature) => `${feature}=()`,
  ),
].join(', ');

/** Headers of every answer of both carriers. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': CONTENT_SECURITY_POLICY,
  'Permissions-Policy': PERMISSIONS_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};
