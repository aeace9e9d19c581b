// The little plain-http helper of a shop network: the authority's certificate and how to trust it. No job data, no cookies.
import { Hono } from 'hono';
import { nothingFor } from './allowed.ts';
import { dressed } from './gate.ts';

const steps = [
  'Android: download the certificate, then Settings > Security > Encryption & credentials > Install a certificate > CA certificate.',
  'iPhone, iPad: download it in Safari and allow the profile, install it under Settings > General > VPN & Device Management,',
  '  then switch it on under Settings > General > About > Certificate Trust Settings.',
  'Windows: open it > Install Certificate > Local Machine > Trusted Root Certification Authorities.',
  'Mac: open it in Keychain Access, then Trust > Always Trust.',
  'Linux: Chromium: Settings > Privacy and security > Security > Manage certificates > Authorities > Import.',
  'Firefox anywhere: Settings > Privacy & Security > View Certificates > Authorities > Import.',
];

/** `address`: where the app itself is, on https. */
export function trustApp(authority: string, fingerprint: string, address: string): Hono {
  const app = new Hono();
  app.use(dressed);
  app.get('/', (c) =>
    c.text(
      [
        `Axlehand is at ${address}`,
        'It needs this shop’s certificate to be trusted once on each device; without it there is no microphone.',
        `1. Download it: /axlehand.crt on this address. 2. Compare its SHA-256 fingerprint: ${fingerprint}`,
        '3. Trust it:',
        ...steps,
      ].join('\n'),
    ),
  );
  app.get('/axlehand.crt', (c) =>
    c.body(authority, 200, {
      'Content-Type': 'application/x-x509-ca-cert',
      'Content-Disposition': 'attachment; filename="axlehand.crt"',
    }),
  );
  app.notFound(nothingFor(app));
  return app;
}
