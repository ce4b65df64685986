/** The answer headers that both hosts put on everything: the window may load its own files and nothing else. */
import { randomBytes } from 'node:crypto';

/** A fresh nonce for one answer: 128 bits, base64url. */
export function newNonce(): string {
  return randomBytes(16).toString('base64url');
}

/**
 * The content security policy. Only a page gets a nonce, and only for style: the component library adds two style
 * elements of its own, with the nonce of the page's meta tag. No inline script ever.
 */
function contentPolicy(nonce: string | null): string {
  const style = nonce === null ? "style-src 'self'" : `style-src 'self' 'nonce-${nonce}'`;
  return [
    "default-src 'none'",
    "script-src 'self'",
    style,
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "frame-ancestors 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "object-src 'none'",
  ].join('; ');
}

const DENIED = [
  'accelerometer',
  'autoplay',
  'camera',
  'display-capture',
  'encrypted-media',
  'geolocation',
  'gyroscope',
  'idle-detection',
  'local-fonts',
  'magnetometer',
  'microphone',
  'midi',
  'payment',
  'publickey-credentials-get',
  'screen-wake-lock',
  'storage-access',
  'usb',
  'window-management',
  'xr-spatial-tracking',
];

/** The scale is reached through HID or serial; nothing else of the machine is. */
const PERMISSIONS_POLICY = ['hid=(self)', 'serial=(self)', ...DENIED.map((name) => `${name}=()`)].join(', ');

/** Headers of every answer. `nonce` is null unless the answer is the window's page. */
export function securityHeaders(nonce: string | null): Record<string, string> {
  return {
    'content-security-policy': contentPolicy(nonce),
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'permissions-policy': PERMISSIONS_POLICY,
  };
}
