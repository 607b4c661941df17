// Asks the browser's authenticator for a passkey, and hands on what it signed. Without it nothing is shown: the password is there.
(() => {
  'use strict';
  const bytes = text => Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), c => c.charCodeAt(0));
  const text = buffer => btoa(String.fromCharCode(...new Uint8Array(buffer))).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');

  const send = async (to, csrf, fields) => {
    const answer = await fetch(to, {method: 'POST', headers: {'X-Boundwright-Form': csrf}, body: new URLSearchParams(fields)});
    if (answer.status === 422) throw new Error(await answer.text());
    if (!answer.ok) throw new Error('The server did not take it. Reload the page and try again.');
    return answer;
  };

  const common = made => ({id: made.id, rawId: text(made.rawId), type: made.type, authenticatorAttachment: made.authenticatorAttachment || undefined, clientExtensionResults: {}});

  const login = async csrf => {
    const asked = await (await send('/login/passkey/ask', csrf, {})).json();
    const got = await navigator.credentials.get({publicKey: {...asked, challenge: bytes(asked.challenge)}});
    const r = got.response;
    await send('/login/passkey', csrf, {answer: JSON.stringify({...common(got), response: {
      clientDataJSON: text(r.clientDataJSON), authenticatorData: text(r.authenticatorData), signature: text(r.signature),
      userHandle: r.userHandle ? text(r.userHandle) : undefined}})});
    location.assign('/');
  };

  const add = async csrf => {
    const name = document.getElementById('passkey-name').value.trim();
    if (!name) throw new Error('Write which device it is, for example: my phone.');
    const asked = await (await send('/me/passkey/ask', csrf, {})).json();
    const made = await navigator.credentials.create({publicKey: {...asked, challenge: bytes(asked.challenge),
      user: {...asked.user, id: bytes(asked.user.id)}, excludeCredentials: asked.excludeCredentials.map(c => ({...c, id: bytes(c.id)}))}});
    await send('/me/passkey', csrf, {name, answer: JSON.stringify({...common(made), response: {
      clientDataJSON: text(made.response.clientDataJSON), attestationObject: text(made.response.attestationObject), transports: []}})});
    location.assign('/me');
  };

  if (!window.PublicKeyCredential) return;
  for (const button of document.querySelectorAll('[data-passkey]')) {
    button.closest('[hidden]').hidden = false;
    button.addEventListener('click', async () => {
      const said = document.getElementById('passkey-error');
      said.textContent = '';
      button.disabled = true;
      try {
        await (button.dataset.passkey === 'login' ? login : add)(button.dataset.csrf);
      } catch (e) {
        said.textContent = e.name === 'NotAllowedError' ? 'The device was not asked to the end, or it has no passkey for here.'
          : e.name === 'InvalidStateError' ? 'This device has a passkey for this account already.' : e.message;
      }
      button.disabled = false;
    });
  }
})();
