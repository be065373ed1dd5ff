import { createHash } from 'node:crypto';
import { derOf } from './certificates.ts';

/**
 * The certificate as a configuration profile that iOS and iPadOS install (payload com.apple.security.root, Apple's
 * Configuration Profile Reference, from memory). The same certificate makes the same profile.
 */
export function appleProfile(authority: string): string {
  const der = derOf(authority);
  const payload = identity(der, 'payload');
  const profile = identity(der, 'profile');
  return `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0"><dict>
<key>PayloadType</key><string>Configuration</string>
<key>PayloadVersion</key><integer>1</integer>
<key>PayloadIdentifier</key><string>shoulderline.${profile}</string>
<key>PayloadUUID</key><string>${profile}</string>
<key>PayloadDisplayName</key><string>Shoulderline</string>
<key>PayloadContent</key><array><dict>
<key>PayloadType</key><string>com.apple.security.root</string>
<key>PayloadVersion</key><integer>1</integer>
<key>PayloadIdentifier</key><string>shoulderline.${profile}.${payload}</string>
<key>PayloadUUID</key><string>${payload}</string>
<key>PayloadDisplayName</key><string>Shoulderline</string>
<key>PayloadCertificateFileName</key><string>shoulderline.crt</string>
<key>PayloadContent</key><data>${der.toString('base64')}</data>
</dict></array>
</dict></plist>
`;
}

/** A UUID (RFC 9562, version 8) that follows from the certificate. */
function identity(der: Buffer, part: string): string {
  const hex = createHash('sha256').update(part).update(der).digest('hex');
  const digits = `${hex.slice(0, 12)}8${hex.slice(13, 16)}8${hex.slice(17, 32)}`;
  return digits.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5').toUpperCase();
}
