// A department's login server for the tests, made of a certified OpenID Provider and invented people: any login is let in with any password.
// Says where it is; reads one line from its input, a JSON text with client, secret and redirect; says "ready"; ends when its input does.
import { generateKeyPairSync } from 'node:crypto';
import { createServer } from 'node:http';
import { createInterface } from 'node:readline';
import Provider from 'oidc-provider';

const key = generateKeyPairSync('rsa', { modulusLength: 2048 }).privateKey.export({ format: 'jwk' });
const server = createServer();
await new Promise((open) => server.listen(0, '127.0.0.1', open));
const issuer = `http://127.0.0.1:${server.address().port}`;
const lines = createInterface({ input: process.stdin });
lines.on('close', () => process.exit(0));
const told = new Promise((line) => lines.once('line', line));
console.log(issuer);

const asked = JSON.parse(await told);
const provider = new Provider(issuer, {
  clients: [{ client_id: asked.client, client_secret: asked.secret, redirect_uris: [asked.redirect], response_types: ['code'] }],
  cookies: { keys: ['for trials alone'] },
  jwks: { keys: [{ ...key, use: 'sig', alg: 'RS256', kid: 'made-for-this-run' }] },
  pkce: { required: () => true },
});
server.on('request', provider.callback());
console.log('ready');
